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

    [BindProperty(SupportsGet = true)]
    public string? Kind { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Place { get; set; }

    [BindProperty(SupportsGet = true, Name = "show")]
    public string? Filter { get; set; }

    /// <summary>What was asked for, for the links of further pages.</summary>
    public string Asked => string.Join('&', new[] { ("search", Search), ("kind", Kind), ("place", Place), ("show", Filter) }
        .Where(p => !string.IsNullOrEmpty(p.Item2)).Select(p => $"{p.Item1}={Uri.EscapeDataString(p.Item2!)}"));

    /// <summary>The shims to show thickness by thickness, by their code.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Box { get; set; }

    [BindProperty]
    public ReceiveGoods.Request Input { get; set; } = new();

    public Slice<ListStock.Row> Parts { get; private set; } = new([], null);

    public ListStock.Row? ShimBox => Parts.Rows.SingleOrDefault(p => p.Kind == PartKind.Shim && p.Code == Box);

    public IReadOnlyList<ListPlaces.Place> Places { get; private set; } = [];

    [BindProperty]
    public ExpectDelivery.Request Expected { get; set; } = new();

    public IReadOnlyList<ListDeliveries.Row> Deliveries { get; private set; } = [];

    public bool MayReceive { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPostExpect() => await MayWrite("Expected")
        ? await Write(
            Expected,
            ExpectDelivery.Handle,
            expected =>
            {
                Done = $"{expected.Unit.Say(expected.Quantity)} of {expected.Name} expected on {Days.Write(expected.ExpectedOn)}.";
                return Redirect("/stores#deliveries");
            },
            again: Show,
            prefix: "Expected")
        : Forbid();

    public async Task<IActionResult> OnPostClose(Guid id) => await MayWrite("")
        ? await Write(
            new CloseDelivery.Request { Id = id },
            CloseDelivery.Handle,
            _ =>
            {
                Done = "That delivery is not expected any more.";
                return Redirect("/stores#deliveries");
            },
            again: Show,
            prefix: "")
        : Forbid();

    public async Task<IActionResult> OnPost() => await MayWrite("Input")
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

    /// <summary>A page with two forms binds the fields of both; only the faults of the one that was sent count.</summary>
    private Task<bool> MayWrite(string form)
    {
        foreach (var key in ModelState.Keys.Where(k => k.Contains('.', StringComparison.Ordinal) && !k.StartsWith($"{form}.", StringComparison.Ordinal)).ToList())
        {
            ModelState.Remove(key);
        }

        return May(Policies.KeepsStores);
    }

    private async Task<IActionResult> Show()
    {
        var parts = await Read(new ListStock.Request(After, Search, null, Kind, Place, Filter), ListStock.Handle);
        if (parts.TryGet(out var list, out var problem))
        {
            Parts = list;
        }
        else
        {
            problem.AddTo(ModelState, "");
        }

        Places = (await Read(new ListPlaces.Request(), ListPlaces.Handle)).Value.Places;
        Deliveries = (await Read(new ListDeliveries.Request(), ListDeliveries.Handle)).Value.Rows;
        MayReceive = await May(Policies.KeepsStores);
        return Page();
    }
}
