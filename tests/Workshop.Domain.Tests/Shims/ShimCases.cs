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

    public static IReadOnlyList<BoxShim> Box(params decimal[] thicknesses) =>
        [.. thicknesses.Select(t => new BoxShim(Mm(t), StockCondition.New, 1))];

    public static ShimThickness Mm(decimal millimetres) => ShimThickness.FromMillimetres(millimetres);

    public static ClearanceLimits Limits(Side side, int lobe, decimal lower, decimal upper, decimal setTo, decimal ratio = 0.6m) => new(
        side, lobe, Clearance.FromMillimetres(lower), Clearance.FromMillimetres(upper), Clearance.FromMillimetres(setTo),
        LeverRatio.From(ratio), Source);
}
