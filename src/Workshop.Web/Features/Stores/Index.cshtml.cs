using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

public sealed class IndexModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    /// <summary>The shims to show thickness by thickness, by their code.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Box { get; set; }

    [BindProperty]
    public ReceiveGoods.Request Input { get; set; } = new();

    public Slice<ListStock.Row> Parts { get; private set; } = new([], null);

    public ListStock.Row? ShimBox => Parts.Rows.SingleOrDefault(p => p.Kind == PartKind.Shim && p.Code == Box);

    public IReadOnlyList<ListPlaces.Place> Places { get; private set; } = [];

    public bool MayReceive { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.KeepsStores)
        ? await Write(
            Input,
            ReceiveGoods.Handle,
            received =>
            {
                Done = $"Took in {received.Unit.Say(received.Quantity)} of {received.Name} to {received.Place}; {received.Unit.Say(received.OnHand)} there now.";
                return Redirect("/stores");
            },
            again: Show)
        : Forbid();

    private async Task<IActionResult> Show()
    {
        var parts = await Read(new ListStock.Request(After, Search), ListStock.Handle);
        if (parts.TryGet(out var list, out var problem))
        {
            Parts = list;
        }
        else
        {
            problem.AddTo(ModelState, "");
        }

        Places = (await Read(new ListPlaces.Request(), ListPlaces.Handle)).Value.Places;
        MayReceive = await May(Policies.KeepsStores);
        return Page();
    }
}
