using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.TorqueSheets;

public sealed class TorqueSheetModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public TickFastener.Request Input { get; set; } = new();

    /// <summary>The way that is chosen: wrench, adapter and angle; see <see cref="WayOf"/>.</summary>
    [BindProperty]
    public string? Way { get; set; }

    [BindProperty]
    public WitnessTick.Request Witness { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetTorqueSheet.Answer Sheet { get; private set; } = null!;

    public bool MayTick { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            TakeWay(Input) with { Number = Number },
            TickFastener.Handle,
            ticked =>
            {
                Done = SayTicked(ticked);
                return Redirect($"/job-cards/{Number}/torque-sheet#{PlaceOf(ticked.FastenerCode)}");
            },
            again: Show)
        : Forbid();

    public async Task<IActionResult> OnPostWitness() => await May(Policies.Measures)
        ? await Write(
            Witness with { Number = Number },
            WitnessTick.Handle,
            confirmed =>
            {
                Done = "Confirmed by a second person.";
                return Redirect($"/job-cards/{Number}/torque-sheet#{PlaceOf(confirmed.FastenerCode)}");
            },
            again: Show,
            prefix: nameof(Witness))
        : Forbid();

    /// <summary>How many of the offers stand on the sheet; all of them are behind "Another way".</summary>
    public const int WaysShown = 4;

    /// <summary>An offer as a form sends it back.</summary>
    public static string WayOf(OfferLine offer)
    {
        ArgumentNullException.ThrowIfNull(offer);
        return FormattableString.Invariant($"{offer.Id} {offer.AdapterId} {offer.AdapterAngleDegrees}").TrimEnd();
    }

    /// <summary>What was chosen before a refusal; else the best.</summary>
    public bool IsChosen(string fastenerCode, OfferLine offer, OfferLine best) =>
        Way is not null && Input.FastenerCode == fastenerCode ? Way == WayOf(offer) : offer == best;

    internal static string SayTicked(TickFastener.Answer ticked) => ticked.NotTightened == 0
        ? "Every fastener of the sheet is ticked."
        : $"{ticked.NotTightened} of the sheet still to be tightened.";

    private TickFastener.Request TakeWay(TickFastener.Request typed)
    {
        var parts = (Way ?? "").Split(' ');
        return typed with
        {
            WrenchId = typed.WrenchId ?? (Guid.TryParse(parts[0], out var wrench) ? wrench : null),
            AdapterId = parts.Length > 1 && Guid.TryParse(parts[1], out var adapter) ? adapter : null,
            AdapterAngleDegrees = parts.Length > 2 && decimal.TryParse(parts[2], CultureInfo.InvariantCulture, out var angle) ? angle : null,
        };
    }

    /// <summary>Where a fastener stands on the page, to come back to after its tick.</summary>
    public static string PlaceOf(string fastenerCode) => $"fastener-{fastenerCode}";

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetTorqueSheet.Request(Number), GetTorqueSheet.Handle)).TryGet(out var sheet, out problem))
        {
            return Refused(problem);
        }

        (Head, Sheet) = (head, sheet);
        MayTick = head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        return Page();
    }
}
