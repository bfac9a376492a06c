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

    /// <summary>The way that is chosen: wrench, adapter and angle; see <see cref="FastenerView.WayOf"/>.</summary>
    [BindProperty]
    public string? Way { get; set; }

    [BindProperty]
    public WitnessTick.Request Witness { get; set; } = new();

    /// <summary>The step of the bay screen that the form stood in.</summary>
    [BindProperty(Name = "returnTo")]
    public string? ReturnTo { get; set; }

    public CardHead Head { get; private set; } = null!;

    public GetTorqueSheet.Answer Sheet { get; private set; } = null!;

    public bool MayTick { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            FastenerView.Take(Input, Way) with { Number = Number },
            TickFastener.Handle,
            ticked =>
            {
                Done = SayTicked(ticked);
                return Back(ticked.FastenerCode);
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
                return Back(confirmed.FastenerCode);
            },
            again: Show,
            prefix: nameof(Witness))
        : Forbid();

    /// <summary>A fastener with its forms; what was chosen before a refusal is chosen again.</summary>
    public FastenerView ViewOf(GetTorqueSheet.Line line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return new FastenerView(Number, Head.Time, line, MayTick, Input.FastenerCode == line.FastenerCode ? Way : null);
    }

    internal static string SayTicked(TickFastener.Answer ticked) => ticked.NotTightened == 0
        ? "Every fastener of the sheet is ticked."
        : $"{ticked.NotTightened} of the sheet still to be tightened.";

    /// <summary>Where a fastener stands on the page, to come back to after its tick.</summary>
    public static string PlaceOf(string fastenerCode) => $"fastener-{fastenerCode}";

    private LocalRedirectResult Back(string fastenerCode) =>
        LocalRedirect(Url.IsLocalUrl(ReturnTo) ? ReturnTo : $"/job-cards/{Number}/torque-sheet#{PlaceOf(fastenerCode)}");

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
