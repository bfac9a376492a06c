using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Tests.Shims;

/// <summary>An invented engine: finger followers at ratio 0.6, two lobes on its one intake valve, two exhaust valves.</summary>
internal static class ShimCases
{
    public static readonly ValveKey Intake = new(1, Side.Intake, 1);
    public static readonly ValveKey Exhaust = new(1, Side.Exhaust, 1);
    public static readonly ValveKey Exhaust2 = new(1, Side.Exhaust, 2);

    private static readonly Provenance Source = new("Invented for tests", "1");

    public static EngineSpecification Finger() => new()
    {
        ValveTrain = ValveTrainKind.ShimUnderFingerFollower,
        Layout = new EngineLayout("Single made up for tests", [new(1, "only")], "the left", [1], TurningDirection.Clockwise, "the right", "T"),
        Valves = [new(Intake, Lobes: 2), new(Exhaust), new(Exhaust2)],
        Camshafts = [new("cam", "Camshaft", [Intake, Exhaust, Exhaust2])],
        MeasuringPositions = [new("Compression dead centre", 0, "T", [new(Intake, 1), new(Intake, 2), new(Exhaust), new(Exhaust2)])],
        Limits =
        [
            Limits(Side.Intake, 1, 0.10m, 0.20m, 0.15m),
            Limits(Side.Intake, 2, 0.10m, 0.22m, 0.16m),
            Limits(Side.Exhaust, 1, 0.20m, 0.30m, 0.25m),
        ],
        Shims = new ShimRange("shim-9", 9, "disc", Mm(1.2m), Mm(3.2m), 0.025m, Source),
        Cold = new ColdCondition(8, Temperature.FromCelsius(5), Temperature.FromCelsius(35), "probe", Source),
        Accesses = [],
        Joints = [],
        Fasteners = [],
        ServiceItems = [],
        Provenance = Source,
    };

    public static MeasuredValve Found(ValveKey valve, decimal? shim, params (decimal Go, decimal NoGo)[] lobes) => new(
        valve,
        lobes.Select((l, index) => (index, Bracket.Of(
                BracketKind.GoAndNoGo, Clearance.FromMillimetres(l.Go), Clearance.FromMillimetres(l.NoGo))))
            .ToDictionary(l => l.index + 1, l => l.Item2),
        shim is { } thickness ? Mm(thickness) : null);

    /// <summary>New shims in the box, one of each as often as it is named.</summary>
    public static IReadOnlyList<ShimLot> Box(params decimal[] thicknesses) =>
        [.. thicknesses.GroupBy(t => t).Select(t => new ShimLot($"box-{t.Key:0.000}", Mm(t.Key), StockCondition.New, LotSource.Box, t.Count(), "A1"))];

    public static ShimLot OnBench(string code, decimal thickness, ValveKey from) =>
        new(code, Mm(thickness), StockCondition.Used, LotSource.Bench, 1, $"on the bench, out of {from.Spoken}", from);

    public static PlanTask Task(
        EngineSpecification engine, IEnumerable<MeasuredValve> measured, IEnumerable<ShimLot> shims, PlanOptions? options = null) => new()
    {
        Specification = engine, Measured = [.. measured], Shims = [.. shims], Options = options ?? new PlanOptions(),
    };

    public static ShimThickness Mm(decimal millimetres) => ShimThickness.FromMillimetres(millimetres);

    public static ClearanceLimits Limits(Side side, int lobe, decimal lower, decimal upper, decimal setTo, decimal ratio = 0.6m) => new(
        side, lobe, Clearance.FromMillimetres(lower), Clearance.FromMillimetres(upper), Clearance.FromMillimetres(setTo),
        LeverRatio.From(ratio), Source);

    public static Instant At(int minute) => Instant.FromUtc(2026, 3, 2, 8, 0) + Duration.FromMinutes(minute);

    /// <summary>A reading as it stands on a card: go as given, no-go a hundredth above.</summary>
    public static ClearanceReading Row(
        ValveKey valve, Stage stage, decimal goMm, int attempt = 1, int lobe = 1, int minute = 0) => new()
    {
        Id = NewId.At(At(minute)), EngineId = Guid.Empty, JobCardNumber = 1001, Valve = valve, Lobe = lobe, Stage = stage, Attempt = attempt,
        Kind = BracketKind.GoAndNoGo, Go = Clearance.FromMillimetres(goMm), NoGo = Clearance.FromMillimetres(goMm + 0.01m),
        OdometerReadingId = Guid.Empty, MeasuredAt = At(minute), MeasuredBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = At(minute),
    };

    public static ShimObservation Seen(
        ValveKey valve, Stage stage, decimal? thickness, int minute = 0, ShimObservation? supersedes = null) => new()
    {
        Id = NewId.At(At(minute)), EngineId = Guid.Empty, JobCardNumber = 1001, Valve = valve, Stage = stage,
        Thickness = thickness is { } mm ? Mm(mm) : null, OdometerReadingId = Guid.Empty, MeasuredAt = At(minute),
        MeasuredBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = At(minute), SupersedesId = supersedes?.Id,
    };

    public static ValveEvent Event(ValveKey valve, ValveEventKind kind, int minute = 0) => new()
    {
        Id = NewId.At(At(minute)), EngineId = Guid.Empty, JobCardNumber = 1001, Valve = valve, Kind = kind,
        OdometerReadingId = Guid.Empty, HappenedAt = At(minute), EnteredBy = Guid.Empty, EnteredAt = At(minute),
    };
}
