using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Domain.Orders;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>One order from draft to the last receipt.</summary>
public sealed class OrderModel(WorkshopDbContext db) : WorkshopPage
{
    /// <summary>Below the lines of a draft, for parts that are added by hand.</summary>
    public const int EmptyLines = 2;

    [BindProperty(SupportsGet = true)]
    public int OrderNumber { get; set; }

    [BindProperty]
    public EditOrder.Request Input { get; set; } = new();

    [BindProperty]
    public PlaceOrder.Request Place { get; set; } = new();

    [BindProperty]
    public ReceiveOrder.Request Receive { get; set; } = new();

    [BindProperty]
    public SetDeliveryDay.Request Day { get; set; } = new();

    public GetOrder.Answer Found { get; private set; } = null!;

    public IReadOnlyList<ListPlaces.Place> Places { get; private set; } = [];

    /// <summary>Where most of each part lies now, by its code.</summary>
    public IReadOnlyDictionary<string, Guid> UsualPlaces { get; private set; } = new Dictionary<string, Guid>();

    public WorkshopTime Time { get; private set; } = null!;

    public bool MayOrder { get; private set; }

    public bool MayReceive { get; private set; }

    private string Here => $"/stores/orders/{OrderNumber}";

    /// <summary>What was typed in a line of the draft, when the form comes back; else what stands in it.</summary>
    public string? Typed(int line, string field, decimal? stands) => TypedIn($"Input.Lines[{line}].{field}", stands);

    /// <summary>The same of what came.</summary>
    public string? TypedReceipt(int line, string field, decimal? stands) => TypedIn($"Receive.Lines[{line}].{field}", stands);

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await MayWrite(Policies.Orders, nameof(Input))
        ? await Write(Input with { Number = OrderNumber }, EditOrder.Handle, saved => Saved($"Saved: {saved.Lines} lines."), Show)
        : Forbid();

    public async Task<IActionResult> OnPostPlace() => await MayWrite(Policies.Orders, nameof(Place))
        ? await Write(
            Place with { Number = OrderNumber }, PlaceOrder.Handle,
            placed => Saved(placed.FirstExpectedOn == placed.LastExpectedOn
                ? $"Placed: {placed.Lines} lines are expected on {Days.Write(placed.FirstExpectedOn)}."
                : $"Placed: {placed.Lines} lines are expected from {Days.Write(placed.FirstExpectedOn)} to {Days.Write(placed.LastExpectedOn)}."),
            Show, nameof(Place))
        : Forbid();

    public async Task<IActionResult> OnPostReceive() => await MayWrite(Policies.KeepsStores, nameof(Receive))
        ? await Write(
            Receive with { Number = OrderNumber }, ReceiveOrder.Handle,
            received => Saved(
                $"Taken in: {received.Received} lines. {(received.State == PurchaseOrderState.Closed ? "Nothing is open of it any more: it is closed." : $"{received.Open} are still expected.")}"
                + (received.DearerParts.Count > 0 ? $" Dearer than ordered at: {string.Join(", ", received.DearerParts)}." : "")),
            Show, nameof(Receive))
        : Forbid();

    public async Task<IActionResult> OnPostDay() => await MayWrite(Policies.Orders, nameof(Day))
        ? await Write(
            Day with { Number = OrderNumber }, SetDeliveryDay.Handle,
            set => Saved($"{set.Lines} lines are expected on {Days.Write(set.ExpectedOn)} now."), Show, nameof(Day))
        : Forbid();

    public async Task<IActionResult> OnPostClose(uint? version) => await MayWrite(Policies.Orders, "")
        ? await Write(
            new CloseOrder.Request { Number = OrderNumber, RowVersion = version }, CloseOrder.Handle,
            closed => Saved(closed.GivenUp > 0 ? $"Closed; {closed.GivenUp} lines are not expected any more." : "Closed."), Show, "")
        : Forbid();

    private RedirectResult Saved(string done)
    {
        Done = done;
        return Redirect(Here);
    }

    private string? TypedIn(string field, decimal? stands) => ModelState.TryGetValue(field, out var typed)
        ? typed.AttemptedValue
        : stands?.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>A page with several forms binds the fields of all; only the faults of the one that was sent count.</summary>
    private Task<bool> MayWrite(string policy, string form)
    {
        foreach (var key in ModelState.Keys.Where(k => k.Contains('.', StringComparison.Ordinal) && !k.StartsWith($"{form}.", StringComparison.Ordinal)).ToList())
        {
            ModelState.Remove(key);
        }

        return May(policy);
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetOrder.Request(OrderNumber), GetOrder.Handle)).TryGet(out var found, out var problem))
        {
            return Refused(problem);
        }

        (Found, Time) = (found, await WorkshopTimes.Read(db, HttpContext.RequestAborted));
        (MayOrder, MayReceive) = (await May(Policies.Orders), await May(Policies.KeepsStores));
        if (found.State == PurchaseOrderState.Placed)
        {
            Places = (await Read(new ListPlaces.Request(), ListPlaces.Handle)).Value.Places;
            UsualPlaces = await WhereItLies([.. found.Lines.Select(l => l.PartCode)]);
        }

        return Page();
    }

    private async Task<IReadOnlyDictionary<string, Guid>> WhereItLies(IReadOnlyCollection<string> codes) =>
        (await (
            from balance in db.StockBalances.AsNoTracking()
            join part in db.Parts on balance.PartId equals part.Id
            where codes.Contains(part.Code) && balance.Condition == StockCondition.New
            group balance by new { part.Code, balance.PlaceId } into lying
            select new { lying.Key.Code, lying.Key.PlaceId, OnHand = lying.Sum(b => b.OnHand) }).ToListAsync(HttpContext.RequestAborted))
        .GroupBy(l => l.Code).ToDictionary(g => g.Key, g => g.MaxBy(l => l.OnHand)!.PlaceId, StringComparer.Ordinal);
}
