using MathNet.Numerics.Distributions;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

/// <summary>
/// The marginal likelihood once more, slow and plain on purpose: dense grids over every level, every slope and what a cluster
/// shares, another library's normal distribution.
/// </summary>
internal static class BruteForce
{
    private const int Nodes = 601;
    private const double Reach = 8;

    public static double LogLikelihood(
        IReadOnlyList<List<List<(double X, double Lower, double Upper)>>> groups, PathParameters at, int perCluster = 4) =>
        groups.Chunk(perCluster).AsParallel().Sum(cluster => Cluster(cluster, at));

    private static double Cluster(List<List<(double X, double Lower, double Upper)>>[] groups, PathParameters at)
    {
        var spread = Math.Sqrt(Math.Pow(at.SlopeDeviation[0], 2) + Math.Pow(at.ClusterDeviation, 2));
        var slopes = Grid(at.SlopeMean[0], spread, 241);
        var tables = groups.Select(group => slopes.Select(b => Group(group, at, b)).ToArray()).ToArray();
        var step = slopes[1] - slopes[0];
        var commons = at.ClusterDeviation == 0 ? [0.0] : Grid(0, at.ClusterDeviation, 121);
        var values = commons.Select(c => tables.Sum(table => LogSum(table.Select((log, i) =>
            log + Normal.PDFLn(at.SlopeMean[0] + c, at.SlopeDeviation[0], slopes[i]) + Math.Log(step)).ToArray())));
        return at.ClusterDeviation == 0
            ? values.Single()
            : LogSum(values.Select((value, i) =>
                value + Normal.PDFLn(0, at.ClusterDeviation, commons[i]) + Math.Log(commons[1] - commons[0])).ToArray());
    }

    private static double Group(List<List<(double X, double Lower, double Upper)>> legs, PathParameters at, double slope)
    {
        var levels = Grid(at.LevelMean[0], at.LevelDeviation[0], Nodes);
        var sum = 0.0;
        foreach (var leg in legs)
        {
            sum += LogSum(levels.Select(level => Normal.PDFLn(at.LevelMean[0], at.LevelDeviation[0], level)
                + Math.Log(levels[1] - levels[0])
                + leg.Sum(reading => LogProbability(reading.Lower, reading.Upper, level + (slope * reading.X), at.Sigma))).ToArray());
        }

        return sum;
    }

    private static double LogProbability(double lower, double upper, double mean, double sigma)
    {
        var (l, h) = ((lower - mean) / sigma, (upper - mean) / sigma);
        var probability = l > 0
            ? Normal.CDF(0, 1, -l) - Normal.CDF(0, 1, -h)
            : Normal.CDF(0, 1, h) - Normal.CDF(0, 1, l);
        return Math.Log(Math.Max(probability, 1e-300));
    }

    private static double[] Grid(double mean, double deviation, int nodes) =>
        [.. Enumerable.Range(0, nodes).Select(i => mean + (deviation * Reach * ((2.0 * i / (nodes - 1)) - 1)))];

    private static double LogSum(double[] logs)
    {
        var largest = logs.Max();
        return largest + Math.Log(logs.Sum(log => Math.Exp(log - largest)));
    }
}
