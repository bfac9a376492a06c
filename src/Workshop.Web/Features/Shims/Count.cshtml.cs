using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>A count of one box, size by size: the sheet shows what the ledger says, an empty field is not counted.</summary>
public sealed class CountModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string Box { get; set; } = "";

    [BindProperty]
    public CountShims.Request Input { get; set; } = new();

    public GetShimBox.Answer Open { get; private set; } = null!;

    public bool MayWrite { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.KeepsStores)
        ? await Write(
            Input with { PartCode = Box },
            CountShims.Handle,
            counted =>
            {
                Done = $"Counted {counted.Sizes} sizes; {(counted.Differences.Count == 0 ? "box and ledger agree" : $"{counted.Differences.Count} differed and are put right")}.";
                return Redirect($"/stores/shims?box={Uri.EscapeDataString(counted.PartCode)}");
            },
            again: Show)
        : Forbid();

    /// <summary>What was typed for a size, when the form comes back.</summary>
    public string? TypedFor(int index) => ModelState[$"Input.Lines[{index}].Counted"]?.AttemptedValue;

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetShimBox.Request(Box), GetShimBox.Handle)).TryGet(out var open, out var problem))
        {
            return Refused(problem);
        }

        Open = open;
        MayWrite = await May(Policies.KeepsStores);
        return Page();
    }
}
