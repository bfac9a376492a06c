using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Estimates;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>What a visit, or one of its findings, would cost now; what a person changes of it; and the estimates that were made.</summary>
public sealed class CardEstimateModel(WorkshopDbContext db) : WorkshopPage
{
    public const int OtherRows = 3;

    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    /// <summary>The finding that is priced; absent for the visit itself.</summary>
    [BindProperty(SupportsGet = true)]
    public Guid? Finding { get; set; }

    [BindProperty]
    public MakeEstimate.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public PreviewEstimate.Answer Preview { get; private set; } = null!;

    public IReadOnlyList<ListEstimates.Row> Made { get; private set; } = [];

    public string? FindingPlace { get; private set; }

    public IReadOnlyList<string> TaxCodes { get; private set; } = [];

    public bool MayMake { get; private set; }

    /// <summary>What stands above lines that are not charged in any case.</summary>
    public static string GroupOf(LineView line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return (line.OptionName, line.Charge) switch
        {
            (null, EstimateCharge.Always) => "",
            (null, _) => "Charged only if used",
            ({ } option, EstimateCharge.Always) => $"If needed: {option}",
            ({ } option, _) => $"If needed: {option}, charged only if used",
        };
    }

    /// <summary>What was typed when the form comes back, else the proposed price.</summary>
    public string? PriceOf(int index, LineView line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return ModelState[$"Input.Lines[{index}].UnitPrice"]?.AttemptedValue ?? line.UnitPrice?.ToString("0.00##", null);
    }

    public string? ReasonOf(int index) => ModelState[$"Input.Lines[{index}].Reason"]?.AttemptedValue;

    public bool IsDropped(int index) => Input.Lines?.ElementAtOrDefault(index)?.Dropped ?? false;

    public MakeEstimate.Other? OtherAt(int index) => Input.Others?.ElementAtOrDefault(index);

    /// <summary>A number as it was typed, when the form comes back.</summary>
    public string? Typed(int index, string field) => ModelState[$"Input.Others[{index}].{field}"]?.AttemptedValue;

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Books)
        ? await Write(
            Input with { Number = Number, FindingId = Finding },
            MakeEstimate.Handle,
            made =>
            {
                Done = $"Estimate {made.Version} is made: {Money.Say(made.Sums.Gross, made.Currency)} with tax.";
                return Redirect(Finding is { } finding ? $"/findings/{finding}" : $"/estimates/{made.Id}");
            },
            again: Show)
        : Forbid();

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new PreviewEstimate.Request(Number, Finding), PreviewEstimate.Handle)).TryGet(out var preview, out problem)
            || !(await Read(new ListEstimates.Request(Number), ListEstimates.Handle)).TryGet(out var list, out problem)
            || !(await Read(new GetMoney.Request(), GetMoney.Handle)).TryGet(out var money, out problem))
        {
            return Refused(problem);
        }

        (Head, Preview, Made) = (head, preview, list.Estimates);
        TaxCodes = [.. money.TaxRates.Where(r => r.Holds).Select(r => r.Code)];
        FindingPlace = await db.Findings.Where(f => f.Id == Finding).Select(f => f.Place).SingleOrDefaultAsync(HttpContext.RequestAborted);
        MayMake = AnswerRules.RefuseChange(head.Card) is null && await May(Policies.Books);
        return Page();
    }
}
