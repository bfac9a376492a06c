using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.CamTiming;

/// <summary>One stage of cam timing of a visit: what is stated, drawn beside what was measured, and the form for more.</summary>
public sealed class CamTimingModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    /// <summary>Turns of the crankshaft that the form has room for.</summary>
    private const int RoomForTurns = 3;

    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty(SupportsGet = true)]
    public Stage Stage { get; set; }

    [BindProperty]
    public RecordCamTiming.Request Input { get; set; } = new();

    [BindProperty]
    public ConfirmHandTurns.Request Turns { get; set; } = new();

    [BindProperty]
    public ConfirmCamRecheck.Request Recheck { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetCamTiming.Answer Card { get; private set; } = null!;

    public TurningDirection Turning { get; private set; }

    public bool MayWrite { get; private set; }

    public IReadOnlyList<SelectListItem> Jigs { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Wheels { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Gauges { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Calipers { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Wrenches { get; private set; } = [];

    public static IReadOnlyList<SelectListItem> Passes { get; } =
        [new("not checked", ""), new("passes", "True"), new("does not pass", "False")];

    public static IReadOnlyList<SelectListItem> Stations { get; } =
        [.. Enum.GetValues<LiftStation>().Select(s => new SelectListItem(s.Spoken(), s.ToString()))];

    public static IReadOnlyList<SelectListItem> DeadCentres { get; } =
        [.. Enum.GetValues<DeadCentreMethod>().Select(m => new SelectListItem(m.Spoken(), m.ToString()))];

    public static IReadOnlyList<SelectListItem> Changes { get; } =
        [.. Enum.GetValues<ChainChangeKind>().Select(k => new SelectListItem(k.Spoken(), k.ToString()))];

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            WithoutUntouched(Input) with { Number = Number, Stage = Stage },
            RecordCamTiming.Handle,
            written => Back($"{written.Written} {(written.Written == 1 ? "entry is" : "entries are")} written. {string.Join(" ", written.Drives.Select(d => d.CauseSentences[0]).Concat(written.Checks))}"),
            again: Show)
        : Forbid();

    public async Task<IActionResult> OnPostTurned() => await May(Policies.Measures)
        ? await Write(Turns with { Number = Number }, ConfirmHandTurns.Handle, _ => Back("The two turns by hand are confirmed."), again: Show, prefix: nameof(Turns))
        : Forbid();

    public async Task<IActionResult> OnPostRecheck() => await May(Policies.Measures)
        ? await Write(Recheck with { Number = Number }, ConfirmCamRecheck.Handle, _ => Back("The re-check after the tensioner was fitted is confirmed."), again: Show, prefix: nameof(Recheck))
        : Forbid();

    public static string Capital(string name) => name.Length == 0 ? name : char.ToUpperInvariant(name[0]) + name[1..];

    private RedirectResult Back(string done)
    {
        Done = done;
        return Redirect($"/job-cards/{Number}/cam-timing?stage={Stage}");
    }

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetCamTiming.Request(Number), GetCamTiming.Handle)).TryGet(out var card, out problem)
            || !(await OpenCard.Find(db, Number, HttpContext.RequestAborted)).TryGet(out var open, out problem))
        {
            return Refused(problem);
        }

        (Head, Card, Turning) = (head, card, open.Specification.Layout.Turning);
        MayWrite = head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        if (MayWrite)
        {
            await ReadInstruments();
            Input = WithAllRows(Input);
        }

        return Page();
    }

    private async Task ReadInstruments()
    {
        var today = Head.Time.DayOf(clock.GetCurrentInstant());
        var all = (await db.Instruments.AsNoTracking().OrderBy(i => i.Name).ThenBy(i => i.SerialNumber).ToListAsync(HttpContext.RequestAborted))
            .FindAll(i => i.MayBeUsedOn(today));
        (Jigs, Wheels, Gauges, Calipers, Wrenches) = (
            Of(InstrumentKind.AlignmentJig), Of(InstrumentKind.DegreeWheel), Of(InstrumentKind.DialGauge), Of(InstrumentKind.Caliper), Of(InstrumentKind.TorqueWrench));

        SelectListItem[] Of(InstrumentKind kind) =>
            [.. all.Where(i => i.Kind == kind).Select(i => new SelectListItem($"{i.Name}, {i.SerialNumber}", i.Id.ToString()))];
    }

    /// <summary>One row for every camshaft, lobe and drive, in the order of the specification; what was typed keeps its place.</summary>
    private RecordCamTiming.Request WithAllRows(RecordCamTiming.Request typed)
    {
        var drives = Card.Drives.Select(d => d.Stated).ToList();
        var stated = drives.SelectMany(d => d.Lobes).FirstOrDefault(l => l.AtLiftMm is not null);
        return typed with
        {
            LiftMm = typed.LiftMm ?? (HttpMethods.IsGet(Request.Method) ? stated?.AtLiftMm : null),
            Station = typed.Station ?? (HttpMethods.IsGet(Request.Method) ? stated?.MeasuredAt : null),
            Alignments = [.. drives.SelectMany(d => d.CamshaftCodes()).Select(code =>
                typed.Alignments?.FirstOrDefault(a => a?.Camshaft == code) ?? new RecordCamTiming.AlignmentRow { Camshaft = code })],
            Lobes = [.. drives.SelectMany(d => d.Lobes).Select(l => Padded(
                typed.Lobes?.FirstOrDefault(row => row?.Camshaft == l.Camshaft && row.Side == l.Side)
                ?? new RecordCamTiming.LobeRow { Camshaft = l.Camshaft, Side = l.Side }))],
            Chains = [.. drives.Select(d => typed.Chains?.FirstOrDefault(c => c?.Drive == d.Code) ?? new RecordCamTiming.ChainRow { Drive = d.Code })],
            Changes = [.. drives.Select(d => typed.Changes?.FirstOrDefault(c => c?.Drive == d.Code) ?? new RecordCamTiming.ChangeRow { Drive = d.Code })],
        };
    }

    private static RecordCamTiming.LobeRow Padded(RecordCamTiming.LobeRow row) => row with
    {
        Readings = [.. Enumerable.Range(0, Math.Max(RoomForTurns, row.Readings?.Count ?? 0)).Select(i => row.Readings?.ElementAtOrDefault(i) ?? new RecordCamTiming.ReadingRow())],
    };

    /// <summary>A row that nobody touched is taken out, the others keep their numbers.</summary>
    private static RecordCamTiming.Request WithoutUntouched(RecordCamTiming.Request typed) => typed with
    {
        Alignments = [.. (typed.Alignments ?? []).Select(a => a is null or { Passes: null } ? null : a)],
        Lobes = [.. (typed.Lobes ?? []).Select(l => l is null ? null : l with
        {
            Readings = [.. (l.Readings ?? []).Select(r => r is null or { OpensDegrees: null, ClosesDegrees: null } ? null : r)],
        }).Select(l => l?.Readings!.Any(r => r is not null) == true ? l : null)],
        Chains = [.. (typed.Chains ?? []).Select(c => c is null or { ExtensionMm: null, LengthMm: null, AtStop: false } ? null : c)],
        Changes = [.. (typed.Changes ?? []).Select(c => c is null or { Kind: null } ? null : c)],
    };
}
