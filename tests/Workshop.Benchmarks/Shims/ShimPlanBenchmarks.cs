using BenchmarkDotNet.Attributes;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Domain.Statistics;
using Workshop.Domain.Stores;

namespace Workshop.Benchmarks.Shims;

/// <summary>The plan for a made-up engine of sixteen valves on four shafts, with what each choice costs; the bar is 10 ms with 300 shims.</summary>
[MemoryDiagnoser]
public class ShimPlanBenchmarks
{
    private PlanTask task = null!;

    [Params(300, 1000)]
    public int Shims { get; set; }

    /// <summary>Every valve set anew, or those alone that are out of their limits: about one in three, under all four shafts.</summary>
    [Params(false, true)]
    public bool SetAll { get; set; }

    [GlobalSetup]
    public void Draw() => task = BenchmarkEngine.Task(Shims, SetAll);

    [Benchmark]
    public ShimPlan Plan() => ShimPlanner.For(task);
}

/// <summary>Belongs to no engine.</summary>
internal static class BenchmarkEngine
{
    private static readonly Provenance Source = new("Invented for a benchmark", "1");

    public static PlanTask Task(int shims, bool setAll)
    {
        var random = new RandomSource(16);
        List<Valve> valves = [.. Enumerable.Range(1, 4).SelectMany(c => new[] { Side.Intake, Side.Exhaust }.SelectMany(s =>
            Enumerable.Range(1, 2).Select(p => new Valve(new ValveKey(c, s, p)))))];
        return new PlanTask
        {
            Specification = Engine(valves),
            Measured = [.. valves.Select(v => Measured(random, v.Key))],
            Shims = [.. Enumerable.Range(0, shims).Select(i => new ShimLot(
                $"lot-{i}", ShimThickness.FromMillimetres(random.WholeNumber(1_200, 3_200) / 1000m), StockCondition.New, LotSource.Box, 1, "A"))],
            Options = new PlanOptions { SetAll = setAll, Guard = GuardBand.At95Percent, BladeUncertaintyMm = 0.001m, MicrometerUncertaintyMm = 0.002m },
        };
    }

    private static MeasuredValve Measured(RandomSource random, ValveKey valve)
    {
        var go = decimal.Round((decimal)random.Normal(valve.Side == Side.Intake ? 0.12 : 0.21, 0.07), 2);
        var bracket = Bracket.Of(
            BracketKind.GoAndNoGo, Clearance.FromMillimetres(decimal.Max(go, 0.02m)), Clearance.FromMillimetres(decimal.Max(go, 0.02m) + 0.01m));
        return new MeasuredValve(valve, new Dictionary<int, Bracket> { [1] = bracket }, ShimThickness.FromMillimetres(random.WholeNumber(1_800, 2_600) / 1000m));
    }

    private static EngineSpecification Engine(List<Valve> valves) => new()
    {
        ValveTrain = ValveTrainKind.ShimUnderFingerFollower,
        Layout = new EngineLayout("Vee made up for a benchmark", [new(1, "front"), new(2, "rear"), new(3, "front"), new(4, "rear")],
            "the left", [1, 2, 3, 4], TurningDirection.Clockwise, "the right", "T"),
        Valves = valves,
        Camshafts = [.. valves.GroupBy(v => (v.Key.Side, v.Key.Cylinder % 2)).Select(g => new Camshaft($"{g.Key}", $"Camshaft {g.Key}", [.. g.Select(v => v.Key)]))],
        MeasuringPositions = [new("Dead centre", 0, "T", [.. valves.Select(v => new LobeKey(v.Key))])],
        Limits = [Limits(Side.Intake, 0.10m, 0.20m), Limits(Side.Exhaust, 0.20m, 0.30m)],
        Shims = new ShimRange("shim-9", 9, "disc", ShimThickness.FromMillimetres(1.2m), ShimThickness.FromMillimetres(3.2m), 0.025m, Source),
        Cold = new ColdCondition(8, Temperature.FromCelsius(5), Temperature.FromCelsius(35), "probe", Source),
        Accesses = [],
        Joints = [],
        Fasteners = [],
        ServiceItems = [],
        Provenance = Source,
    };

    private static ClearanceLimits Limits(Side side, decimal lower, decimal upper) => new(
        side, 1, Clearance.FromMillimetres(lower), Clearance.FromMillimetres(upper), Clearance.FromMillimetres((lower + upper) / 2),
        LeverRatio.From(0.6m), Source);
}
