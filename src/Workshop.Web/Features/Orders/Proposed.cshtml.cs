using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>What to order of whom, each supplier a form that makes a draft.</summary>
public sealed class ProposedModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int? Lasts { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool Shims { get; set; }

    [BindProperty]
    public DraftOrder.Request Input { get; set; } = new();

    public ProposeOrders.Answer? Proposed { get; private set; }

    public bool MayOrder { get; private set; }

    /// <summary>The fields of the form that came back are named as its faults are; those of the others by their place.</summary>
    public string IdOf(Guid supplier, int form, int line) => IsTyped(supplier) ? $"Input_Lines_{line}__Quantity" : $"quantity-{form}-{line}";

    /// <summary>What was typed, when the form comes back; else what is proposed.</summary>
    public string? QuantityOf(Guid supplier, int line, decimal? proposed) => IsTyped(supplier)
        ? ModelState[$"Input.Lines[{line}].Quantity"]?.AttemptedValue
        : proposed?.ToString("0.####", CultureInfo.InvariantCulture);

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost()
    {
        if (!await May(Policies.Orders))
        {
            return Forbid();
        }

        await GiveReasons();
        return await Write(
            Input,
            DraftOrder.Handle,
            made =>
            {
                Done = $"Order {made.Number} to {made.Supplier} is a draft of {made.Lines} lines; it goes to nobody until you place it.";
                return Redirect($"/stores/orders/{made.Number}");
            },
            again: Show);
    }

    private bool IsTyped(Guid supplier) => Input.SupplierId == supplier;

    /// <summary>Why each line is ordered, as it is reckoned now and not as a form says.</summary>
    private async Task GiveReasons()
    {
        if (ModelState.IsValid && (await Read(new ProposeOrders.Request(Lasts, Shims), ProposeOrders.Handle)).TryGet(out var proposed, out _))
        {
            var reasons = proposed.Suppliers.Where(s => s.SupplierId == Input.SupplierId).SelectMany(s => s.Lines.Concat(s.Additions))
                .ToDictionary(l => (l.PartCode, l.ThicknessMm), l => l.Why);
            for (var i = 0; i < Input.Lines.Count; i++)
            {
                Input.Lines[i] = Input.Lines[i] with { Reason = reasons.GetValueOrDefault((Input.Lines[i].PartCode ?? "", Input.Lines[i].ThicknessMm)) };
            }
        }
    }

    private async Task<IActionResult> Show()
    {
        MayOrder = await May(Policies.Orders);
        if (!ModelState.IsValid && ModelState.ContainsKey(nameof(Lasts)) && ModelState[nameof(Lasts)]!.Errors.Count > 0)
        {
            Response.StatusCode = StatusCodes.Status400BadRequest;
            return Page();
        }

        if ((await Read(new ProposeOrders.Request(Lasts, Shims), ProposeOrders.Handle)).TryGet(out var proposed, out var problem))
        {
            Proposed = proposed;
        }
        else
        {
            problem.AddTo(ModelState, "");
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        }

        return Page();
    }
}
