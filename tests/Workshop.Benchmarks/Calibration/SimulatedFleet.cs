using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Benchmarks.Calibration;

/// <summary>One valve as it truly is at the last check, in terms of its last leg.</summary>
/// <param name="Checks">Checks that its engine has had.</param>
/// <param name="Side">0 intake, 1 exhaust.</param>
/// <param name="Level">True y* at x = 0 of the last leg.</param>
/// <param name="Slope">True slope, mm per 10,000 km.</param>
/// <param name="X">Where the last check stands along the last leg.</param>
/// <param name="Lower">Lower limit of y*: the clearance's, with the shims' part.</param>
/// <param name="Upper">Upper limit of y*.</param>
/// <param name="Readings">Leg, x and middle of each reading.</param>
internal sealed record SimulatedValve(
    int Checks, int Side, double Level, double Slope, double X, double Lower, double Upper, List<(int Leg, double X, double Middle)> Readings);

/// <summary>
/// A made-up fleet of one engine model: engines of four intake and four exhaust valves, new levels about set-to, slopes with a
/// part that an engine's valves share, checks with blades, and an adjustment of what reads near or beyond a limit.
/// </summary>
internal sealed class SimulatedFleet
{
    /// <summary>How far ahead anyone looks, in 10,000 km.</summary>
    public const double Reach = 20;

    private const double BetweenEngines = 0.003;
    private const double NewSpread = 0.015;
    private const double NewOffset = 0.004;
    private const double SetSpread = 0.010;
    private const double Sigma = 0.006;
    private const double ShimStep = 0.025;
    private const double Margin = 0.01;
    private static readonly double[] SetTo = [0.16, 0.26];
    private static readonly double[] LowerLimit = [0.10, 0.20];
    private static readonly double[] UpperLimit = [0.20, 0.30];
    private static readonly double[] MeanSlope = [-0.006, -0.012];

    private readonly FleetScenario scenario;
    private readonly RandomSource random;
    private readonly PathDataBuilder builder = new();
    private bool anyAdjusted;

    private SimulatedFleet(FleetScenario scenario, ulong seed)
    {
        this.scenario = scenario;
        random = new RandomSource(seed);
    }

    public PathData Data { get; private set; } = new PathDataBuilder().Build();

    public List<SimulatedValve> Valves { get; } = [];

    /// <summary>What the fleet was drawn from; levels set by unknown shims are a class of their own.</summary>
    public PathParameters Truth { get; private set; } = new()
    {
        LevelMean = [], LevelDeviation = [], SlopeMean = [], SlopeDeviation = [], Sigma = Sigma,
    };

    public static SimulatedFleet Draw(FleetScenario scenario, int valves, ulong seed)
    {
        var fleet = new SimulatedFleet(scenario, seed);
        for (var engine = 0; engine < valves / 8; engine++)
        {
            fleet.Engine(scenario.Checks[engine % scenario.Checks.Count]);
        }

        fleet.Data = fleet.builder.Build();
        fleet.Truth = new PathParameters
        {
            LevelMean = fleet.anyAdjusted ? [NewOffset, 0] : [NewOffset],
            LevelDeviation = fleet.anyAdjusted ? [NewSpread, SetSpread] : [NewSpread],
            SlopeMean = MeanSlope,
            SlopeDeviation = [scenario.BetweenValves, scenario.BetweenValves],
            Sigma = Sigma,
            ClusterDeviation = BetweenEngines,
        };
        return fleet;
    }

    private void Engine(int checks)
    {
        var common = random.Normal(0, BetweenEngines);
        var visits = new (double At, double Effect)[checks];
        var at = 0.0;
        for (var visit = 0; visit < visits.Length; visit++)
        {
            at += random.Uniform(2, 4);
            visits[visit] = (at, random.Normal(0, scenario.VisitEffect));
        }

        builder.Cluster();
        for (var valve = 0; valve < 8; valve++)
        {
            Valves.Add(Valve(valve / 4, common, visits));
        }
    }

    private SimulatedValve Valve(int side, double common, (double At, double Effect)[] visits)
    {
        var slope = random.Normal(MeanSlope[side] + common, scenario.BetweenValves);
        var level = SetTo[side] + random.Normal(NewOffset, NewSpread);
        var readings = new List<(int, double, double)>();
        double origin = 0, shims = 0;
        var leg = 0;
        builder.Group(side);
        builder.Leg(0, SetTo[side]);
        foreach (var (at, effect) in visits)
        {
            var middle = Read();
            if (middle > LowerLimit[side] + Margin && middle < UpperLimit[side] - Margin)
            {
                continue;
            }

            if (scenario.KnownShims)
            {
                shims -= ShimStep * Math.Round((SetTo[side] - middle) / ShimStep);
            }
            else
            {
                anyAdjusted = true;
                (origin, leg) = (at, leg + 1);
                level = random.Normal(SetTo[side], SetSpread);
                builder.Leg(1, SetTo[side]);
            }

            Read();

            // Reads the clearance through a blade and files it as y*; returns the middle of the clearance's bracket.
            double Read()
            {
                var clearance = level + (slope * (at - origin)) - shims + effect + random.Normal(0, Sigma);
                var lower = scenario.Step * Math.Floor(clearance / scenario.Step);
                builder.Reading(at - origin, lower + shims, lower + scenario.Step + shims);
                readings.Add((leg, at - origin, lower + (scenario.Step / 2) + shims));
                return lower + (scenario.Step / 2);
            }
        }

        return new SimulatedValve(
            visits.Length, side, level, slope, visits[^1].At - origin, LowerLimit[side] + shims, UpperLimit[side] + shims, readings);
    }
}
