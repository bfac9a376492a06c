using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Kits;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Domain.Statistics;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Shims;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// The valve clearance check of one visit: measured as found, what is out adjusted by the shim plan, measured as left. The
/// blades meet the simulated engine; the database sees only what they say.
/// </summary>
internal sealed class ValveWork(
    DemoStaff staff, Stockroom stores, PlannedVisit visit, ClearanceSimulation engine, int number, string technician, RandomSource draw)
{
    private const string Method = "surface probe at the head";
    private const double NotColdShare = 0.03;

    private readonly EngineSpecification specification = visit.Motorcycle.EngineModel.Specification;
    private readonly Dictionary<LobeKey, Verdict> standing = [];
    private readonly HashSet<string> tightened = new(StringComparer.Ordinal);

    /// <summary>Codes of fasteners that are tight already: those that had to be before the readings as left.</summary>
    public IReadOnlySet<string> Tightened => tightened;

    /// <summary>The adjustment was begun, and what it opens must be closed.</summary>
    public bool Begun { get; private set; }

    /// <summary>A clearance is left outside its limits, and somebody has to accept that.</summary>
    public bool LeavesOutside => Outside().Any();

    /// <summary>Valves that were found tight.</summary>
    public IReadOnlyCollection<ValveKey> Tight { get; private set; } = [];

    /// <param name="before">What is done between the readings as found and the adjustment.</param>
    public async Task Do(Func<Task> before, CancellationToken ct)
    {
        staff.SetClock(visit.Day, 9, 30);
        await Record(AsFound(), ct);
        Tight = standing.Where(s => s.Value == Verdict.TooTight).Select(s => s.Key.Valve).Distinct().Order().ToArray();
        await before();
        var wrong = Outside().Select(l => l.Valve).Distinct().ToList();
        if (wrong.Count == 0)
        {
            return;
        }

        staff.SetClock(visit.Day, 10, 40);
        var adjustment = specification.ServiceItems.First(i => i.Kind == ServiceItemKind.ValveClearanceAdjustment);
        await staff.Do(technician, new StartItem.Request { Number = number, Code = adjustment.Code }, StartItem.Handle, ct);
        Begun = true;
        if (specification.ValveTrain == ValveTrainKind.ScrewAndLocknut)
        {
            await TurnScrews(wrong, ct);
        }
        else if (visit.Sloppy)
        {
            await ChangeUnmeasured(wrong, ct);
        }
        else
        {
            await ChangeShims(wrong, ct);
        }
    }

    private IEnumerable<LobeKey> Outside() =>
        standing.Where(s => s.Value is Verdict.TooTight or Verdict.TooWide).Select(s => s.Key).Order();

    private RecordReadings.Request AsFound()
    {
        var all = Measured(Stage.AsFound, ReadingRules.LobesOf(specification));
        return draw.Chance(NotColdShare)
            ? all with
            {
                HeadTemperatureC = specification.Cold.Highest.Celsius + 6, KeptWhyNotCold = "Brought late, the owner waits.",
            }
            : all;
    }

    private RecordReadings.Request Measured(Stage stage, IEnumerable<LobeKey> lobes)
    {
        var (set, blades) = staff.FeelerSets[visit.FeelerSet];
        return new RecordReadings.Request
        {
            Number = number,
            InstrumentId = set,
            HeadTemperatureC = decimal.Round((decimal)draw.Uniform(14, 25), 1),
            TemperatureMethod = Method,
            Readings =
            [
                .. lobes.Select(lobe => (lobe, Read: engine.Measure(lobe, visit.At, blades))).Select(r => new RecordReadings.ReadingRow
                {
                    Valve = r.lobe.Valve.ToString(), Lobe = r.lobe.Lobe, Stage = stage, Kind = r.Read.Kind,
                    GoMm = r.Read.Go?.Millimetres, NoGoMm = r.Read.NoGo?.Millimetres,
                }),
            ],
        };
    }

    /// <summary>As left, of the valves that a shaft disturbs as it comes out for these, or whose screw was turned.</summary>
    private RecordReadings.Request AsLeft(IReadOnlyCollection<ValveKey> valves)
    {
        var byShaft = specification.ValveTrain == ValveTrainKind.ScrewAndLocknut
            ? valves
            : [.. specification.Camshafts.Where(c => c.Valves.Any(valves.Contains)).SelectMany(c => c.Valves)];
        return Measured(Stage.AsLeft, ReadingRules.LobesOf(specification).Where(l => byShaft.Contains(l.Valve)));
    }

    private async Task Record(RecordReadings.Request request, CancellationToken ct)
    {
        var answer = await staff.Do(technician, request, RecordReadings.Handle, ct);
        foreach (var reading in answer.Readings)
        {
            standing[new LobeKey(reading.Valve, reading.Lobe)] = reading.Verdict;
        }
    }

    private async Task TurnScrews(List<ValveKey> valves, CancellationToken ct)
    {
        staff.SetClock(visit.Day, 11, 20);
        valves.ForEach(valve => engine.SetScrew(valve, visit.At));
        await Record(new RecordReadings.Request
        {
            Number = number,
            Events = [.. valves.Select(v => new RecordReadings.EventRow { Valve = v.ToString(), Kind = ValveEventKind.ScrewTurned })],
        }, ct);
        await MeasureAsLeft(valves, ct);
    }

    /// <summary>What the adjustment opened is closed, the engine turned by hand, and only then measured.</summary>
    private async Task MeasureAsLeft(IReadOnlyCollection<ValveKey> valves, CancellationToken ct)
    {
        var adjustment = specification.ServiceItems.First(i => i.Kind == ServiceItemKind.ValveClearanceAdjustment);
        foreach (var fastener in Opened.BeyondTheCheck(specification, [adjustment]).Reverse())
        {
            staff.Clock.Now += Duration.FromMinutes(1);
            tightened.Add(fastener.Code);
            await staff.Tighten(technician, number, fastener, ct);
        }

        staff.Clock.Now += Duration.FromMinutes(5);
        await staff.Do(technician, new ConfirmHandTurns.Request { Number = number, NoHardStop = true, MarksRight = true }, ConfirmHandTurns.Handle, ct);
        staff.Clock.Now += Duration.FromMinutes(5);
        await Record(AsLeft(valves), ct);
    }

    /// <summary>Shims out, measured, and others in by the plan. What the box lacks is ordered and comes the same day.</summary>
    private async Task ChangeShims(List<ValveKey> valves, CancellationToken ct)
    {
        await Record(new RecordReadings.Request
        {
            Number = number,
            MicrometerId = staff.Micrometer,
            Shims = [.. valves.Select(v => Row(v, Stage.AsFound, engine.ShimIn(v)))],
        }, ct);
        var plan = await Plan(ct);
        var ordered = plan.Where(v => v is { Advice: ShimAdvice.OrderShim, NewMm: not null }).ToList();
        foreach (var shim in ordered)
        {
            await stores.Deliver(specification.Shims!.PartCode, shim.NewMm!.Value, staff.Clock.Now, ct);
        }

        var chosen = (ordered.Count > 0 ? await Plan(ct) : plan)
            .Where(v => v is { Advice: ShimAdvice.FitShim, NewMm: not null }).ToList();

        // The plan may take a shim out of a valve that was within its limits: that one is measured as it comes out.
        var alsoOut = chosen.Where(v => !valves.Contains(v.Key)).Select(v => Row(v.Key, Stage.AsFound, engine.ShimIn(v.Key))).ToList();
        chosen.ForEach(v => engine.Fit(v.Key, v.NewMm!.Value));
        staff.SetClock(visit.Day, 13, 30);
        var changed = valves.Union(chosen.Select(v => v.Key)).ToList();
        if (chosen.Count > 0)
        {
            await Record(new RecordReadings.Request
            {
                Number = number,
                MicrometerId = staff.Micrometer,
                Shims = [.. alsoOut, .. chosen.Select(v => Row(v.Key, Stage.AsLeft, v.NewMm) with
                {
                    FromBox = v.Shim?.Source == LotSource.Box,
                    FromValve = v.Shim?.Source == LotSource.Box ? null : v.Shim?.FromValve?.ToString(),
                    OldIntoBox = chosen.TrueForAll(other => other.Shim?.Source != LotSource.Valve || other.Shim.FromValve != v.Key),
                })],
            }, ct);
        }

        await MeasureAsLeft(changed, ct);
    }

    /// <summary>As some do who are in a hurry: by feel, from a drawer, with no micrometer near.</summary>
    private async Task ChangeUnmeasured(List<ValveKey> valves, CancellationToken ct)
    {
        valves.ForEach(valve => engine.Fit(valve, ByFeel.Shim(engine, specification, valve, visit.At)));
        staff.SetClock(visit.Day, 13);
        await Record(new RecordReadings.Request
        {
            Number = number,
            Shims =
            [
                .. valves.Select(v => Row(v, Stage.AsFound, null)), .. valves.Select(v => Row(v, Stage.AsLeft, null)),
            ],
        }, ct);
        await MeasureAsLeft(valves, ct);
    }

    private async Task<IReadOnlyList<GetShimPlan.Valve>> Plan(CancellationToken ct) =>
        (await staff.Look(technician, new GetShimPlan.Request(number), GetShimPlan.Handle, ct)).Valves;

    private static RecordReadings.ShimRow Row(ValveKey valve, Stage stage, ShimThickness? thickness) => new()
    {
        Valve = valve.ToString(), Stage = stage, ThicknessMm = thickness?.Millimetres,
    };
}

/// <summary>How a shim was chosen before there was a plan: the nearest whole step towards set-to.</summary>
internal static class ByFeel
{
    public static ShimThickness Shim(ClearanceSimulation engine, EngineSpecification specification, ValveKey valve, Distance at)
    {
        var range = specification.Shims!;
        var missing = ReadingRules.LobesOf(specification).Where(l => l.Valve == valve).Average(lobe =>
        {
            var limits = ReadingRules.LimitsOf(specification, lobe);
            return (engine.ClearanceAt(lobe, at) - (double)limits.SetTo.Millimetres) / (double)limits.LeverRatio.Value;
        });
        var steps = decimal.Round((decimal)missing / range.StepMm);
        var thickness = engine.ShimIn(valve)!.Value.Millimetres + (steps * range.StepMm);
        return ShimThickness.FromMillimetres(Math.Clamp(thickness, range.Smallest.Millimetres, range.Largest.Millimetres));
    }
}
