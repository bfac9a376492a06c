using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>Orders in every state, and the workshop's service level.</summary>
public sealed class IndexModel(WorkshopDbContext db) : WorkshopPage
{
    private const string Here = "/stores/orders";

    [BindProperty(SupportsGet = true)]
    public string? State { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    [BindProperty]
    public DraftOrder.Request Input { get; set; } = new();

    [BindProperty]
    public SetServiceLevel.Request Level { get; set; } = new();

    public Slice<ListOrders.Row> Orders { get; private set; } = new([], null);

    public IReadOnlyList<ListSuppliers.Row> Suppliers { get; private set; } = [];

    public string Currency { get; private set; } = "";

    public GetServiceLevel.Answer Stands { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    public bool MayOrder { get; private set; }

    public bool MayManage { get; private set; }

    /// <summary>What was typed for the first line, when the form comes back.</summary>
    public string? Typed(string field) => ModelState[$"Input.Lines[0].{field}"]?.AttemptedValue;

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await MayWrite(Policies.Orders, nameof(Input))
        ? await Write(
            Input,
            DraftOrder.Handle,
            made =>
            {
                Done = $"Order {made.Number} is a draft; it goes to nobody until you place it.";
                return Redirect($"{Here}/{made.Number}");
            },
            again: Show)
        : Forbid();

    public async Task<IActionResult> OnPostLevel() => await MayWrite(Policies.Manages, nameof(Level))
        ? await Write(
            Level,
            SetServiceLevel.Handle,
            _ =>
            {
                Done = "The service level is saved; proposals follow it from now on.";
                return Redirect(Here);
            },
            again: Show,
            prefix: nameof(Level))
        : Forbid();

    /// <summary>A page with two forms binds the fields of both; only the faults of the one that was sent count.</summary>
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
        if ((await Read(new ListOrders.Request(State, After), ListOrders.Handle)).TryGet(out var orders, out var problem))
        {
            Orders = orders;
        }
        else
        {
            problem.AddTo(ModelState, "");
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        }

        var suppliers = (await Read(new ListSuppliers.Request(), ListSuppliers.Handle)).Value;
        (Suppliers, Currency) = ([.. suppliers.Suppliers.Where(s => !s.Retired)], suppliers.Currency);
        Stands = (await Read(new GetServiceLevel.Request(), GetServiceLevel.Handle)).Value;
        Level = Level.ServiceLevel is null ? new SetServiceLevel.Request { ServiceLevel = (decimal)Stands.ServiceLevel } : Level;
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        (MayOrder, MayManage) = (await May(Policies.Orders), await May(Policies.Manages));
        return Page();
    }
}
