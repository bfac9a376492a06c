using Workshop.Domain.Statistics.Paths;

namespace Workshop.Benchmarks.Calibration;

/// <summary>What a scenario showed, added up over seeds.</summary>
internal sealed class ScenarioFigures
{
    private readonly List<double> model = [];
    private readonly List<double> oracle = [];
    private readonly List<double> line = [];
    private int slopes;
    private int clearances;

    public int Valves => model.Count;

    public int Failures { get; private set; }

    /// <summary>Share of the valves whose true slope lies in its 90 % interval.</summary>
    public double SlopeCoverage => (double)slopes / Valves;

    /// <summary>The same for the clearance 30,000 km on.</summary>
    public double ClearanceCoverage => (double)clearances / Valves;

    /// <summary>Mean absolute error of the 50 % leaving distance, in 10,000 km.</summary>
    public double ModelError => model.Average();

    public double OracleError => oracle.Average();

    public double LineError => line.Average();

    /// <summary>By how much the line errs more than the model, and the standard error of that.</summary>
    public (double Mean, double Error) LineLessModel
    {
        get
        {
            var differences = line.Zip(model, (l, m) => l - m).ToList();
            var mean = differences.Average();
            return (mean, Math.Sqrt(differences.Sum(d => (d - mean) * (d - mean)) / differences.Count / differences.Count));
        }
    }

    public void Fail() => Failures++;

    public void Add(bool slopeInside, bool clearanceInside, double modelError, double oracleError, double lineError)
    {
        slopes += slopeInside ? 1 : 0;
        clearances += clearanceInside ? 1 : 0;
        model.Add(modelError);
        oracle.Add(oracleError);
        line.Add(lineError);
    }
}

/// <summary>
/// Fits simulated fleets and compares what is said of each valve with what is true of it. The oracle has the same posterior at
/// the parameters that the fleet was drawn from; the line is what anybody would draw.
/// </summary>
internal static class CalibrationStudy
{
    private const double Ahead = 3;

    /// <summary>The figures of a scenario's valves, by how many checks they have had.</summary>
    public static SortedDictionary<int, ScenarioFigures> Run(FleetScenario scenario, int seeds, int valves)
    {
        var figures = new SortedDictionary<int, ScenarioFigures>(scenario.Checks.ToDictionary(c => c, _ => new ScenarioFigures()));
        for (var seed = 1; seed <= seeds; seed++)
        {
            var fleet = SimulatedFleet.Draw(scenario, valves, (ulong)seed);
            var fit = IntervalPaths.Fit(fleet.Data, new PathOptions { SharedSlopes = true });
            if (fit.HasValue)
            {
                Compare(fleet, fit.Value, figures);
            }
            else
            {
                figures.Values.ToList().ForEach(f => f.Fail());
            }
        }

        return figures;
    }

    private static void Compare(SimulatedFleet fleet, PathFit fit, SortedDictionary<int, ScenarioFigures> figures)
    {
        var found = new (bool Slope, bool Clearance, double Model, double Oracle, double Line)[fleet.Valves.Count];
        Parallel.For(0, fleet.Data.Clusters, cluster =>
        {
            var posterior = IntervalPaths.PosteriorOfCluster(fleet.Data, fit, cluster);
            var oracle = IntervalPaths.PosteriorOfCluster(fleet.Data, fleet.Truth, cluster);
            for (var v = 0; v < 8; v++)
            {
                var valve = fleet.Valves[(8 * cluster) + v];
                var truth = Leaves(valve, valve.Level + (valve.Slope * valve.X), valve.Slope);
                found[(8 * cluster) + v] = (
                    Inside(valve.Slope, posterior.Groups[v].SlopeQuantile),
                    Inside(
                        valve.Level + (valve.Slope * (valve.X + Ahead)),
                        p => posterior.Groups[v].ValueQuantile(valve.X + Ahead, p)),
                    Math.Abs(Leaves(valve, posterior.Groups[v]) - truth),
                    Math.Abs(Leaves(valve, oracle.Groups[v]) - truth),
                    Math.Abs(Line(valve, fit.Parameters.SlopeMean[valve.Side]) - truth));
            }
        });
        for (var v = 0; v < found.Length; v++)
        {
            var (slope, clearance, model, oracle, line) = found[v];
            figures[fleet.Valves[v].Checks].Add(slope, clearance, model, oracle, line);
        }
    }

    private static bool Inside(double truth, Func<double, double> quantile) => truth >= quantile(0.05) && truth <= quantile(0.95);

    private static double Leaves(SimulatedValve valve, GroupPosterior posterior) =>
        posterior.LeavingDistances(valve.X, valve.Lower, valve.Upper, [0.5], SimulatedFleet.Reach)[0] - valve.X ?? SimulatedFleet.Reach;

    /// <summary>Distance until a straight line leaves the limits, at most as far as anyone looks.</summary>
    private static double Leaves(SimulatedValve valve, double now, double slope)
    {
        if (now < valve.Lower || now > valve.Upper)
        {
            return 0;
        }

        var distance = slope < 0 ? (now - valve.Lower) / -slope : slope > 0 ? (valve.Upper - now) / slope : SimulatedFleet.Reach;
        return Math.Min(SimulatedFleet.Reach, distance);
    }

    /// <summary>Least squares through the middles, one slope and a level for each leg; the fleet's slope where there is none.</summary>
    private static double Line(SimulatedValve valve, double fleetSlope)
    {
        double squares = 0, products = 0;
        foreach (var leg in valve.Readings.GroupBy(r => r.Leg))
        {
            var (x, y) = (leg.Average(r => r.X), leg.Average(r => r.Middle));
            squares += leg.Sum(r => (r.X - x) * (r.X - x));
            products += leg.Sum(r => (r.X - x) * (r.Middle - y));
        }

        var slope = squares > 0 ? products / squares : fleetSlope;
        var last = valve.Readings.Where(r => r.Leg == valve.Readings[^1].Leg).ToList();
        var now = last.Average(r => r.Middle) + (slope * (valve.X - last.Average(r => r.X)));
        return Leaves(valve, now, slope);
    }
}
