using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Ignition;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Compression;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Ignition;

/// <summary>The spark plugs of a visit: what each looked like, its gap, and what goes back in.</summary>
public sealed class PlugsModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public RecordPlugs.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetPlugs.Answer Card { get; private set; } = null!;

    public bool MayWrite { get; private set; }

    public IReadOnlyList<SelectListItem> Instruments { get; private set; } = [];

    public static IReadOnlyList<SelectListItem> Conditions { get; } =
        [new("not looked at", ""), .. Enum.GetValues<PlugCondition>().Select(c => new SelectListItem(c.Spoken(), c.ToString()))];

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            Input with { Number = Number, Plugs = [.. (Input.Plugs ?? []).Select(p => IsUntouched(p) ? null : p)] },
            RecordPlugs.Handle,
            written =>
            {
                Done = $"{written.Written} {(written.Written == 1 ? "plug is" : "plugs are")} written down.";
                return Redirect($"/job-cards/{Number}/plugs");
            },
            again: Show)
        : Forbid();

    private static bool IsUntouched(RecordPlugs.Row? row) =>
        row is null || (row is { Condition: null, GapFoundMm: null, GapLeftMm: null, Renewed: false } && string.IsNullOrWhiteSpace(row.PartCode));

    private async Task<IActionResult> Show()
    {
        var ct = HttpContext.RequestAborted;
        if (!(await CardHead.Load(db, Number, ct)).TryGet(out var head, out var problem)
            || !(await Read(new GetPlugs.Request(Number), GetPlugs.Handle)).TryGet(out var card, out problem))
        {
            return Refused(problem);
        }

        (Head, Card) = (head, card);
        MayWrite = head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        if (MayWrite)
        {
            Instruments = (await InstrumentChoices.Read(db, head.Time.DayOf(clock.GetCurrentInstant()), ct)).Of(InstrumentKind.PlugGauge, InstrumentKind.FeelerSet);
            Input = Input with
            {
                Gauge = Input.Gauge ?? GapGauge.Wire,
                Plugs = [.. card.Plugs.Select(p =>
                    Input.Plugs?.FirstOrDefault(row => row?.Cylinder == p.Cylinder && (row.Plug ?? 1) == p.Plug)
                    ?? new RecordPlugs.Row { Cylinder = p.Cylinder, Plug = p.Plug })],
            };
        }

        return Page();
    }
}
