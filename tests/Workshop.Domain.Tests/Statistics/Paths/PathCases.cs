using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

/// <summary>Published and simulated readings for the tests of interval paths.</summary>
internal static class PathCases
{
    /// <summary>
    /// 24 groups of one or two legs, 139 readings with blades in steps of 0.01, simulated for the purpose; reference values by
    /// dense trapezoid integration in R 4.2.2 (121 and 301 nodes agree to 2e-10 in the log-likelihood). No published package
    /// fits brackets and random effects together.
    /// </summary>
    public static PathData CaseA()
    {
        var table = CsvTable.Read("caseA", CheckValues.Lines("drift/caseA.csv"));
        var builder = new PathDataBuilder();
        foreach (var group in table.Rows.GroupBy(row => row["valve"]))
        {
            builder.Cluster();
            builder.Group();
            foreach (var leg in group.GroupBy(row => row["chain"]))
            {
                builder.Leg();
                foreach (var row in leg)
                {
                    builder.Reading((double)row.Number("x"), (double)row.Number("lo"), (double)row.Number("hi"));
                }
            }
        }

        return builder.Build();
    }

    /// <summary>The reference's own maximum, at which its posteriors and probabilities are stated.</summary>
    public static PathParameters CaseAMaximum { get; } = Parameters(
        0.3122464042, 0.0185241237, -0.0121338659, 0.0116632767, 0.0052896995);

    /// <summary>sleepstudy of lme4: a level and a slope for each subject; exact, or in brackets of a width about each value.</summary>
    public static PathData SleepStudy(double width)
    {
        var table = CsvTable.Read("sleepstudy", CheckValues.Lines("regression/sleepstudy.csv"));
        var builder = new PathDataBuilder();
        foreach (var subject in table.Rows.GroupBy(row => row["Subject"]))
        {
            builder.Cluster();
            builder.Group();
            builder.Leg();
            foreach (var row in subject)
            {
                var reaction = (double)row.Number("Reaction");
                builder.Reading((double)row.Number("Days"), reaction - (width / 2), reaction + (width / 2));
            }
        }

        return builder.Build();
    }

    public static Computed<PathFit> Fit(PathData data, PathOptions? options = null) =>
        IntervalPaths.Fit(data, options, TestContext.Current.CancellationToken);

    public static double LogLikelihood(PathData data, PathParameters at, bool fine = false) =>
        IntervalPaths.LogLikelihood(data, at, fine, TestContext.Current.CancellationToken);

    /// <summary>One class of levels and of slopes.</summary>
    public static PathParameters Parameters(
        double level, double levelDeviation, double slope, double slopeDeviation, double sigma, double cluster = 0) => new()
        {
            LevelMean = [level],
            LevelDeviation = [levelDeviation],
            SlopeMean = [slope],
            SlopeDeviation = [slopeDeviation],
            Sigma = sigma,
            ClusterDeviation = cluster,
        };

    /// <summary>
    /// Groups as an engine's valves may be: two legs of three readings at x = 0, 1, 2 on a blade step, four groups a cluster.
    /// </summary>
    public static List<List<List<(double X, double Lower, double Upper)>>> Simulate(
        int groups, double step, PathParameters truth, ulong seed)
    {
        var random = new RandomSource(seed);
        var all = new List<List<List<(double, double, double)>>>();
        var common = 0.0;
        for (var g = 0; g < groups; g++)
        {
            common = g % 4 == 0 ? random.Normal(0, truth.ClusterDeviation) : common;
            var slope = random.Normal(truth.SlopeMean[0], truth.SlopeDeviation[0]) + common;
            var legs = new List<List<(double, double, double)>>();
            for (var leg = 0; leg < 2; leg++)
            {
                var level = random.Normal(truth.LevelMean[0], truth.LevelDeviation[0]);
                var readings = new List<(double, double, double)>();
                for (var k = 0; k < 3; k++)
                {
                    var lower = step * Math.Floor((level + (slope * k) + random.Normal(0, truth.Sigma)) / step);
                    readings.Add((k, lower, lower + step));
                }

                legs.Add(readings);
            }

            all.Add(legs);
        }

        return all;
    }

    /// <summary>Puts groups of legs of readings together, so many groups a cluster.</summary>
    public static PathData Build(
        IEnumerable<IEnumerable<IEnumerable<(double X, double Lower, double Upper)>>> groups, int perCluster = 4)
    {
        var builder = new PathDataBuilder();
        var count = 0;
        foreach (var group in groups)
        {
            if (count++ % perCluster == 0)
            {
                builder.Cluster();
            }

            builder.Group();
            foreach (var leg in group)
            {
                builder.Leg();
                foreach (var (x, lower, upper) in leg)
                {
                    builder.Reading(x, lower, upper);
                }
            }
        }

        return builder.Build();
    }
}
