using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Domain.Statistics;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Tests.Shims;

/// <summary>Engines, readings and boxes drawn from a seed; they belong to nothing real.</summary>
internal static class RandomPlans
{
    private static readonly ValveTrainKind[] Trains =
        [ValveTrainKind.ShimUnderBucket, ValveTrainKind.ShimUnderFingerFollower, ValveTrainKind.ShimOverBucket];

    /// <summary>A task with so many valves (an even number) and about so many shims beside those in the valves.</summary>
    public static PlanTask Draw(RandomSource random, int cylinders, int perSide, int shims)
    {
        var engine = Engine(random, cylinders, perSide);
        var forecast = random.Chance(0.4);
        var drift = random.Uniform(-0.03, 0.01);
        return new PlanTask
        {
            Specification = engine,
            Measured = [.. engine.Valves.Select(v => Measured(random, v, engine))],
            Shims = Box(random, shims, engine.Valves[0].Key),
            ShaftsOut = engine.Camshafts.Where(_ => random.Chance(0.15)).Select(c => c.Code).ToHashSet(),
            Options = new PlanOptions
            {
                SetAll = random.Chance(0.25),
                Guard = random.Pick([GuardBand.Off, GuardBand.Off, GuardBand.At95Percent, GuardBand.ExpandedUncertainty]),
                MayMoveBetweenValves = random.Chance(0.8),
                BladeUncertaintyMm = 0.001m,
                MicrometerUncertaintyMm = 0.002m,
            },
            Leaving = forecast
                ? (lobe, mm) => Conformance.Of(
                    (double)mm + drift, (double)ReadingRules.LimitsOf(engine, lobe).Lower.Millimetres,
                    (double)ReadingRules.LimitsOf(engine, lobe).Upper.Millimetres, 0) == Conformity.Proven ? 0.02 : 0.6
                : null,
        };
    }

    private static EngineSpecification Engine(RandomSource random, int cylinders, int perSide)
    {
        var ratio = random.WholeNumber(50, 100) / 100m;
        var bySides = random.Chance(0.5);
        List<Valve> valves = [.. Enumerable.Range(1, cylinders).SelectMany(c => new[] { Side.Intake, Side.Exhaust }.SelectMany(s =>
            Enumerable.Range(1, perSide).Select(p => new Valve(new ValveKey(c, s, p), s == Side.Intake && p == 1 && random.Chance(0.1) ? 2 : 1))))];

        // Two shafts for the whole engine, or as in a vee one of each side for the front and for the rear half.
        var groups = valves.GroupBy(v => (v.Key.Side, Bank: bySides || cylinders == 1 ? 0 : v.Key.Cylinder % 2));
        return ShimCases.Finger() with
        {
            ValveTrain = random.Pick(Trains),
            Valves = valves,
            Camshafts = [.. groups.Select(g => new Camshaft($"{g.Key.Side}-{g.Key.Bank}", $"{g.Key.Side} camshaft {g.Key.Bank}", [.. g.Select(v => v.Key)]))],
            Limits =
            [
                ShimCases.Limits(Side.Intake, 1, 0.10m, 0.20m, 0.15m, ratio),
                ShimCases.Limits(Side.Intake, 2, 0.10m, 0.22m, 0.16m, ratio),
                ShimCases.Limits(Side.Exhaust, 1, 0.20m, 0.30m, 0.25m, ratio),
            ],
        };
    }

    private static MeasuredValve Measured(RandomSource random, Valve valve, EngineSpecification engine)
    {
        var off = random.Chance(0.3);
        var lobes = Enumerable.Range(1, valve.Lobes).ToDictionary(lobe => lobe, lobe =>
        {
            var setTo = ReadingRules.LimitsOf(engine, new LobeKey(valve.Key, lobe)).SetTo.Millimetres;
            var go = decimal.Round(setTo + (decimal)random.Normal(0, off ? 0.07 : 0.025), 2);
            go = decimal.Max(go, 0.02m);
            return Bracket.Of(BracketKind.GoAndNoGo, Clearance.FromMillimetres(go), Clearance.FromMillimetres(go + (0.01m * random.WholeNumber(1, 2))));
        });
        return new MeasuredValve(valve.Key, lobes, ShimThickness.FromMillimetres(random.WholeNumber(1_300, 3_100) / 1000m));
    }

    private static List<ShimLot> Box(RandomSource random, int shims, ValveKey anyValve)
    {
        var lots = new List<ShimLot>();
        while (lots.Sum(l => l.Count) < shims)
        {
            var used = random.Chance(0.3);
            var steps = random.WholeNumber(0, 82);
            var thickness = used ? random.WholeNumber(1_150, 3_250) / 1000m : 1.175m + (0.025m * steps);
            var bench = used && random.Chance(0.1);
            lots.Add(new ShimLot(
                $"lot-{lots.Count}", ShimThickness.FromMillimetres(thickness), used ? StockCondition.Used : StockCondition.New,
                bench ? LotSource.Bench : LotSource.Box, bench ? 1 : random.WholeNumber(1, 3), $"tray {random.WholeNumber(1, 4)}",
                bench ? anyValve : null));
        }

        return lots;
    }
}
