using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Clearances;

/// <summary>
/// One stage of the readings of a visit, as found or as left, in the order of the work. Rows that nobody touched are left
/// alone, so that a visit may be entered in several sends.
/// </summary>
public sealed class ReadingsModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    // A temperature of longer ago is measured again rather than taken over.
    private static readonly Duration TemperatureHolds = Duration.FromMinutes(30);

    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty(SupportsGet = true)]
    public Stage Stage { get; set; }

    [BindProperty]
    public RecordReadings.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetReadings.Answer Card { get; private set; } = null!;

    public IReadOnlyList<SelectListItem> FeelerSets { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Micrometers { get; private set; } = [];

    /// <summary>What was expected of each lobe before the visit; none at as left.</summary>
    public IReadOnlyDictionary<LobeKey, GetCardForecast.Expected> Expected { get; private set; } =
        new Dictionary<LobeKey, GetCardForecast.Expected>();

    public bool MayWrite { get; private set; }

    /// <summary>As left opens once the shafts are held and the engine was turned by hand.</summary>
    public bool MayRead => MayWrite && (Stage == Stage.AsFound || Card.AsLeftWaitsFor.Count == 0);

    [BindProperty]
    public ConfirmHandTurns.Request Turns { get; set; } = new();

    public bool HasShims => Card.ValveTrain != ValveTrainKind.ScrewAndLocknut;

    /// <summary>Something stands at this stage already, which a new entry would replace.</summary>
    public bool MayReplace => Card.Valves.Any(v => ShimOf(v) is not null)
        || Card.Positions.SelectMany(p => p.Lobes).Any(l => ReadingOf(l) is { NotRemeasured: false });

    public static IReadOnlyList<SelectListItem> Kinds { get; } =
        [.. Enum.GetValues<BracketKind>().Select(k => new SelectListItem(k.Spoken(), k.ToString()))];

    public IReadOnlyList<SelectListItem> Events =>
    [
        new("nothing said", ""),
        .. Enum.GetValues<ValveEventKind>().Where(k => k != ValveEventKind.ScrewTurned || !HasShims)
            .Select(k => new SelectListItem(k.Spoken(), k.ToString())),
    ];

    public string StageWords => Stage.Spoken();

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            WithoutUntouched(Input) with { Number = Number },
            RecordReadings.Handle,
            written =>
            {
                Done = Say(written);
                return Redirect($"/job-cards/{Number}/readings?stage={Stage}");
            },
            again: Show)
        : Forbid();

    public async Task<IActionResult> OnPostTurned() => await May(Policies.Measures)
        ? await Write(
            Turns with { Number = Number },
            ConfirmHandTurns.Handle,
            _ =>
            {
                Done = "The two turns by hand are confirmed: the readings as left are open.";
                return Redirect($"/job-cards/{Number}/readings?stage=AsLeft");
            },
            again: Show,
            prefix: nameof(Turns))
        : Forbid();

    public GetReadings.Reading? ReadingOf(GetReadings.LobeState lobe) => Stage == Stage.AsFound ? lobe.AsFound : lobe.AsLeft;

    public GetReadings.Shim? ShimOf(GetReadings.ValveState valve) => Stage == Stage.AsFound ? valve.ShimOut : valve.ShimIn;

    public int RowOf(GetReadings.LobeState lobe) => IndexOf(Input.Readings, r =>
        r.Valve == lobe.Valve.ToString() && (r.Lobe ?? 1) == lobe.Lobe && r.Stage == Stage);

    public int ShimRowOf(GetReadings.ValveState valve) =>
        IndexOf(Input.Shims, r => r.Valve == valve.Valve.ToString() && r.Stage == Stage);

    public int EventRowOf(GetReadings.ValveState valve) => IndexOf(Input.Events, r => r.Valve == valve.Valve.ToString());

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetReadings.Request(Number), GetReadings.Handle)).TryGet(out var card, out problem))
        {
            return Refused(problem);
        }

        (Head, Card) = (head, card);
        if (Stage == Stage.AsFound && (await Read(new GetCardForecast.Request(Number), GetCardForecast.Handle)).TryGet(out var forecast, out _))
        {
            Expected = forecast.Lobes.Where(l => l.WhyNot is null).ToDictionary(l => new LobeKey(l.Valve, l.Lobe));
        }

        MayWrite = head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        if (MayWrite)
        {
            FeelerSets = await Instruments(InstrumentKind.FeelerSet);
            Micrometers = await Instruments(InstrumentKind.Micrometer);
            Input = WithAllRows(HttpContext.Request.Method == HttpMethods.Get ? TakenOver() : Input);
        }

        return Page();
    }

    private async Task<IReadOnlyList<SelectListItem>> Instruments(InstrumentKind kind)
    {
        var today = Head.Time.DayOf(clock.GetCurrentInstant());
        var all = await db.Instruments.AsNoTracking().Where(i => i.Kind == kind).OrderBy(i => i.Name).ThenBy(i => i.SerialNumber).ToListAsync();
        return [.. all.Where(i => i.MayBeUsedOn(today)).Select(i => new SelectListItem($"{i.Name}, {i.SerialNumber}", i.Id.ToString()))];
    }

    /// <summary>What the last send of this visit said about blades and temperature, while that holds.</summary>
    private RecordReadings.Request TakenOver()
    {
        var last = Card.Positions.SelectMany(p => p.Lobes).SelectMany(l => l.History).Where(r => !r.NotRemeasured).MaxBy(r => r.MeasuredAt);
        var holds = last is not null && clock.GetCurrentInstant() - last.MeasuredAt <= TemperatureHolds;
        return new RecordReadings.Request
        {
            InstrumentId = last?.InstrumentId,
            MicrometerId = Card.Valves.SelectMany(v => v.History).Select(s => s.MicrometerId).LastOrDefault(id => id is not null),
            HeadTemperatureC = holds ? last!.HeadTemperatureC?.Celsius : null,
            TemperatureMethod = last?.TemperatureMethod ?? Card.Cold.Method,
        };
    }

    /// <summary>One row for every lobe and valve; rows that came with the form keep their place, which its faults name.</summary>
    private RecordReadings.Request WithAllRows(RecordReadings.Request typed)
    {
        Input = typed;
        var lobes = Card.Positions.SelectMany(p => p.Lobes).Where(l => RowOf(l) < 0)
            .Select(l => new RecordReadings.ReadingRow { Valve = l.Valve.ToString(), Lobe = l.Lobe, Stage = Stage });
        var shims = Card.Valves.Where(v => HasShims && ShimRowOf(v) < 0)
            .Select(v => new RecordReadings.ShimRow { Valve = v.Valve.ToString(), Stage = Stage });
        var events = Card.Valves.Where(v => Stage == Stage.AsLeft && EventRowOf(v) < 0)
            .Select(v => new RecordReadings.EventRow { Valve = v.Valve.ToString() });
        return typed with
        {
            Readings = [.. typed.Readings ?? [], .. lobes],
            Shims = [.. typed.Shims ?? [], .. shims],
            Events = [.. typed.Events ?? [], .. events],
        };
    }

    /// <summary>A row that nobody touched is taken out, the others keep their numbers.</summary>
    private static RecordReadings.Request WithoutUntouched(RecordReadings.Request typed) => typed with
    {
        Readings = [.. (typed.Readings ?? []).Select(r =>
            r is null or { GoMm: null, NoGoMm: null, Kind: null or BracketKind.GoAndNoGo, Stacked: false } ? null : r)],
        Shims = [.. (typed.Shims ?? []).Select(r =>
            r is null or { ThicknessMm: null, NotMeasured: false, FromBox: false, OldIntoBox: false } ? null : r)],
        Events = [.. (typed.Events ?? []).Select(r => r is null or { Kind: null } ? null : r)],
    };

    private static string Say(RecordReadings.Answer written)
    {
        var parts = new List<string>();
        if (written.Readings.Count > 0)
        {
            parts.Add(written.Readings.Count == 1 ? "1 reading is written." : $"{written.Readings.Count} readings are written.");
        }

        if (written.Shims > 0)
        {
            parts.Add(written.Shims == 1 ? "1 shim is written." : $"{written.Shims} shims are written.");
        }

        if (written.Events > 0)
        {
            parts.Add("What was done is written.");
        }

        parts.AddRange(written.Readings.Where(r => r.Verdict != Verdict.Within)
            .Select(r => $"{new LobeKey(r.Valve, r.Lobe).Spoken}: {r.Words}."));
        parts.AddRange(written.Warnings);
        parts.AddRange(written.Checks);
        return string.Join(" ", parts);
    }

    private static int IndexOf<T>(IReadOnlyList<T?>? rows, Func<T, bool> suits)
        where T : class
    {
        for (var i = 0; i < (rows?.Count ?? 0); i++)
        {
            if (rows![i] is { } row && suits(row))
            {
                return i;
            }
        }

        return -1;
    }
}
