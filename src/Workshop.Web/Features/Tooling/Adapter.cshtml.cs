using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

public sealed class AdapterModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid AdapterId { get; set; }

    [BindProperty]
    public EditAdapter.Request Input { get; set; } = new();

    public ListAdapters.Row Found { get; private set; } = null!;

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input with { Id = AdapterId },
        EditAdapter.Handle,
        _ =>
        {
            Done = "Saved.";
            return Redirect("/tooling/adapters");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new ListAdapters.Request(AdapterId), ListAdapters.HandleOne)).TryGet(out var found, out var problem))
        {
            return Refused(problem);
        }

        Found = found;
        if (Input.Name is null && !ModelState.ContainsKey("Input.Name"))
        {
            Input = new EditAdapter.Request
            {
                Name = found.Name, EffectiveLengthMm = found.EffectiveLengthMm, ThicknessMm = found.ThicknessMm, Drive = found.Drive,
                Tool = found.Tool, Retired = found.Retired,
            };
        }

        return Page();
    }
}
