using MathNet.Numerics.Distributions;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

/// <summary>The posterior of the last leg's level and the slope on a dense grid; each cell of the level counts by its share.</summary>
internal sealed class BruteForcePosterior
{
    private const int Slopes = 401;
    private const int Levels = 801;
    private const double Reach = 7;

    private readonly double[] slopes;
    private readonly double[] levels;
    private readonly double[,] weights;
    private readonly double sigma;

    private BruteForcePosterior(double[] slopes, double[] levels, double[,] weights, double sigma)
    {
        this.slopes = slopes;
        this.levels = levels;
        this.weights = weights;
        this.sigma = sigma;
    }

    public static BruteForcePosterior Of(List<List<(double X, double Lower, double Upper)>> legs, PathParameters at)
    {
        var (slopes, levels, logs) = Table(legs, at, at.SlopeMean[0], at.SlopeDeviation[0]);
        for (var i = 0; i < Slopes; i++)
        {
            for (var j = 0; j < Levels; j++)
            {
                logs[i, j] += Normal.PDFLn(at.SlopeMean[0], at.SlopeDeviation[0], slopes[i]);
            }
        }

        return new(slopes, levels, Weights(logs), at.Sigma);
    }

    /// <summary>Any of two groups, and each by itself, with a shared part of the slopes.</summary>
    public static (double Any, double[] Each) Cluster(
        List<List<List<(double X, double Lower, double Upper)>>> groups, PathParameters at, double from, double x, double lower, double upper)
    {
        var spread = Math.Sqrt(Math.Pow(at.SlopeDeviation[0], 2) + Math.Pow(at.ClusterDeviation, 2));
        var tables = groups.Select(g =>
        {
            var (slopes, levels, logs) = Table(g, at, at.SlopeMean[0], spread);
            var weights = Weights(logs);
            var mass = new double[Slopes];
            var left = new double[Slopes];
            for (var i = 0; i < Slopes; i++)
            {
                for (var j = 0; j < Levels; j++)
                {
                    mass[i] += weights[i, j];
                }

                left[i] = mass[i] == 0 ? 0 : Enumerable.Range(0, Levels).Sum(j => weights[i, j] * Outside(levels, j, slopes[i], from, x, lower, upper)) / mass[i];
            }

            return (Slopes: slopes, Mass: mass, Left: left);
        }).ToList();
        double total = 0, none = 0;
        var each = new double[groups.Count];
        for (var c = -180; c <= 180; c++)
        {
            var common = c / 30.0 * at.ClusterDeviation;
            var given = tables.Select(t =>
            {
                var prior = t.Slopes.Select(s => Normal.PDF(at.SlopeMean[0] + common, at.SlopeDeviation[0], s)).ToArray();
                var mass = prior.Select((p, i) => p * t.Mass[i]).Sum();
                return (Mass: mass, Left: mass == 0 ? 0 : prior.Select((p, i) => p * t.Mass[i] * t.Left[i]).Sum() / mass);
            }).ToList();
            var weight = Normal.PDF(0, at.ClusterDeviation, common) * given.Aggregate(1.0, (product, g) => product * g.Mass);
            total += weight;
            none += weight * given.Aggregate(1.0, (product, g) => product * (1 - g.Left));
            for (var g = 0; g < each.Length; g++)
            {
                each[g] += weight * given[g].Left;
            }
        }

        return (1 - (none / total), [.. each.Select(e => e / total)]);
    }

    public double Below(double x, double limit) =>
        Sum((i, j) => Math.Clamp(((limit - (slopes[i] * x) - levels[j]) / (levels[1] - levels[0])) + 0.5, 0, 1));

    public double Left(double from, double x, double lower, double upper) =>
        Sum((i, j) => Outside(levels, j, slopes[i], from, x, lower, upper));

    public double Predictive(double x, double lower, double upper) => Math.Min(1, 2 * Math.Min(
        Sum((i, j) => Normal.CDF(0, sigma, levels[j] + (slopes[i] * x) - lower)),
        Sum((i, j) => Normal.CDF(0, sigma, upper - levels[j] - (slopes[i] * x)))));

    private static double Outside(double[] levels, int j, double slope, double from, double x, double lower, double upper)
    {
        // The share of the level's cell that is inside at both ends.
        var half = (levels[1] - levels[0]) / 2;
        var least = Math.Max(lower - (slope * from), lower - (slope * x));
        var most = Math.Min(upper - (slope * from), upper - (slope * x));
        return 1 - (Math.Clamp(Math.Min(most, levels[j] + half) - Math.Max(least, levels[j] - half), 0, 2 * half) / (2 * half));
    }

    private static (double[] Slopes, double[] Levels, double[,] Logs) Table(
        List<List<(double X, double Lower, double Upper)>> legs, PathParameters at, double mean, double spread)
    {
        var slopes = Grid(mean, spread, Slopes);
        var levels = Grid(at.LevelMean[0], at.LevelDeviation[0], Levels);
        var logs = new double[Slopes, Levels];
        Parallel.For(0, Slopes, i =>
        {
            var earlier = legs.SkipLast(1).Sum(leg => LogSum(levels.Select(level => Log(leg, level, slopes[i], at)).ToArray()));
            for (var j = 0; j < Levels; j++)
            {
                logs[i, j] = earlier + Log(legs[^1], levels[j], slopes[i], at);
            }
        });
        return (slopes, levels, logs);
    }

    private static double Log(List<(double X, double Lower, double Upper)> leg, double level, double slope, PathParameters at) =>
        Normal.PDFLn(at.LevelMean[0], at.LevelDeviation[0], level) + leg.Sum(r =>
        {
            var mean = level + (slope * r.X);
            var (l, h) = ((r.Lower - mean) / at.Sigma, (r.Upper - mean) / at.Sigma);
            return Math.Log(Math.Max(
                1e-300, l > 0 ? Normal.CDF(0, 1, -l) - Normal.CDF(0, 1, -h) : Normal.CDF(0, 1, h) - Normal.CDF(0, 1, l)));
        });

    private static double[,] Weights(double[,] logs)
    {
        var top = logs.Cast<double>().Max();
        var weights = new double[Slopes, Levels];
        var sum = 0.0;
        for (var i = 0; i < Slopes; i++)
        {
            for (var j = 0; j < Levels; j++)
            {
                weights[i, j] = Math.Exp(logs[i, j] - top);
                sum += weights[i, j];
            }
        }

        for (var i = 0; i < Slopes; i++)
        {
            for (var j = 0; j < Levels; j++)
            {
                weights[i, j] /= sum;
            }
        }

        return weights;
    }

    private double Sum(Func<int, int, double> share)
    {
        var sum = 0.0;
        for (var i = 0; i < Slopes; i++)
        {
            for (var j = 0; j < Levels; j++)
            {
                sum += weights[i, j] * share(i, j);
            }
        }

        return sum;
    }

    private static double[] Grid(double mean, double deviation, int nodes) =>
        [.. Enumerable.Range(0, nodes).Select(i => mean + (deviation * Reach * ((2.0 * i / (nodes - 1)) - 1)))];

    private static double LogSum(double[] logs)
    {
        var top = logs.Max();
        return top + Math.Log(logs.Sum(log => Math.Exp(log - top)));
    }
}
