namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// The same model for the middles of the brackets as if they were exact: everything is normal and in closed form, from seven
/// sums a leg. It gives the interval search its start.
/// </summary>
internal sealed class GaussianPaths
{
    private const int PieceSize = 512;

    private readonly PathData data;
    private readonly ParameterLayout layout;
    private readonly int[] free;
    private readonly LegSums[] sums;

    public GaussianPaths(PathData data, ParameterLayout layout, int[] free, double covariateCoefficient)
    {
        this.data = data;
        this.layout = layout;
        this.free = free;
        sums = new LegSums[data.Legs];
        for (var leg = 0; leg < sums.Length; leg++)
        {
            sums[leg] = LegSums.Of(data, leg, covariateCoefficient);
        }
    }

    public ReadOnlySpan<LegSums> Legs => sums;

    /// <summary>The log-likelihood, its score and the outer products of the clusters' scores.</summary>
    public ScoredValue Evaluate(double[] at)
    {
        var units = at[ParameterLayout.ClusterDeviation] == 0 ? data.Groups : data.Clusters;
        var pieces = new ScoredValue[(units + PieceSize - 1) / PieceSize];
        Parallel.For(0, pieces.Length, piece =>
            pieces[piece] = Piece(at, piece * PieceSize, Math.Min(units, (piece + 1) * PieceSize)));
        return ScoredValue.Sum(pieces, free.Length);
    }

    private ScoredValue Piece(double[] at, int first, int end)
    {
        var sum = new ScoredValue(free.Length);
        Span<double> score = stackalloc double[layout.Count];
        Span<double> chosen = stackalloc double[free.Length];
        var shares = at[ParameterLayout.ClusterDeviation] != 0;
        for (var unit = first; unit < end; unit++)
        {
            score.Clear();
            var log = shares
                ? Unit(at, data.ClusterStart[unit], data.ClusterStart[unit + 1], score)
                : Unit(at, unit, unit + 1, score);
            for (var i = 0; i < free.Length; i++)
            {
                chosen[i] = score[free[i]];
            }

            sum.Add(log, chosen);
        }

        return sum;
    }

    /// <summary>
    /// Groups first to end share a common part c: given c each group's log-likelihood is K + (B c - A c^2 / 2 + t^2 B^2 / 2) /
    /// (1 + t^2 A) - log(1 + t^2 A) / 2, with t the deviation of its slopes and A and B from <see cref="Group"/>.
    /// </summary>
    private double Unit(double[] at, int firstGroup, int endGroup, Span<double> score)
    {
        double log = 0, linear = 0, square = 0;
        for (var g = firstGroup; g < endGroup; g++)
        {
            var (constant, information, pull) = Group(at, g);
            var deviation = at[layout.SlopeDeviation(data.SlopeClass[g])];
            var spread = 1 + (deviation * deviation * information);
            log += constant - (0.5 * Math.Log(spread)) + (0.5 * deviation * deviation * pull * pull / spread);
            linear += pull / spread;
            square += information / spread;
        }

        var common = at[ParameterLayout.ClusterDeviation];
        var shrink = 1 + (common * common * square);
        var mean = common * common * linear / shrink;
        var variance = common * common / shrink;
        log += (-0.5 * Math.Log(shrink)) + (0.5 * linear * mean);
        score[ParameterLayout.ClusterDeviation] += (common * linear / shrink * (linear - (square * mean))) - (square * common / shrink);
        for (var g = firstGroup; g < endGroup; g++)
        {
            AddScore(at, g, mean, variance, score);
        }

        return log;
    }

    /// <summary>Log-likelihood K + B s - A s^2 / 2 of a group whose slope lies s above the mean of its class.</summary>
    private (double Constant, double Information, double Pull) Group(double[] at, int group)
    {
        var variance = Math.Exp(2 * at[ParameterLayout.LogSigma]);
        var slope = at[layout.SlopeMean(data.SlopeClass[group])];
        double constant = 0, information = 0, pull = 0;
        for (var leg = data.GroupStart[group]; leg < data.GroupStart[group + 1]; leg++)
        {
            ref readonly var sum = ref sums[leg];
            if (sum.Count == 0)
            {
                continue;
            }

            var deviation = at[layout.LevelDeviation(data.LevelClass[leg])];
            var total = variance + (sum.Count * deviation * deviation);
            var left = sum.MeanY - at[layout.LevelMean(data.LevelClass[leg])] - (slope * sum.MeanX);
            var productXE = sum.ProductXY - (slope * sum.SquaresX);
            var squaresE = sum.SquaresY - (2 * slope * sum.ProductXY) + (slope * slope * sum.SquaresX);
            information += (sum.SquaresX / variance) + (sum.Count * sum.MeanX * sum.MeanX / total);
            pull += (productXE / variance) + (sum.Count * sum.MeanX * left / total);
            constant -= (sum.Count * NormalTails.LogRootTwoPi) + ((sum.Count - 1) * at[ParameterLayout.LogSigma])
                + (0.5 * (Math.Log(total) + (squaresE / variance) + (sum.Count * left * left / total)));
        }

        return (constant, information, pull);
    }

    private void AddScore(double[] at, int group, double commonMean, double commonVariance, Span<double> score)
    {
        var (_, information, pull) = Group(at, group);
        var slopeClass = data.SlopeClass[group];
        var deviation = at[layout.SlopeDeviation(slopeClass)];
        var spread = 1 + (deviation * deviation * information);
        var mean = (commonMean + (deviation * deviation * pull)) / spread;
        var variance = (deviation * deviation / spread) + (commonVariance / (spread * spread));
        var apart = pull - (information * commonMean);
        score[layout.SlopeMean(slopeClass)] += pull - (information * mean);
        score[layout.SlopeDeviation(slopeClass)] +=
            (deviation * ((apart * apart) + (information * information * commonVariance)) / (spread * spread))
            - (information * deviation / spread);
        for (var leg = data.GroupStart[group]; leg < data.GroupStart[group + 1]; leg++)
        {
            if (sums[leg].Count > 0)
            {
                AddLegScore(at, leg, at[layout.SlopeMean(slopeClass)], mean, variance, score);
            }
        }
    }

    private void AddLegScore(double[] at, int leg, double slope, double mean, double variance, Span<double> score)
    {
        ref readonly var sum = ref sums[leg];
        var level = data.LevelClass[leg];
        var own = Math.Exp(2 * at[ParameterLayout.LogSigma]);
        var deviation = at[layout.LevelDeviation(level)];
        var total = own + (sum.Count * deviation * deviation);
        var left = sum.MeanY - at[layout.LevelMean(level)] - ((slope + mean) * sum.MeanX);
        var leftSquared = (left * left) + (sum.MeanX * sum.MeanX * variance);
        var whole = slope + mean;
        var squares = sum.SquaresY - (2 * whole * sum.ProductXY) + (((whole * whole) + variance) * sum.SquaresX);
        score[layout.LevelMean(level)] += sum.Count * left / total;
        score[layout.LevelDeviation(level)] += sum.Count * deviation * ((sum.Count * leftSquared / total) - 1) / total;
        score[ParameterLayout.LogSigma] += (squares / own) - (sum.Count - 1)
            + (own * ((sum.Count * leftSquared / total) - 1) / total);
    }
}

/// <summary>Sums of one leg: how many readings, the means of x and y and the sums of squares and products about them.</summary>
internal readonly record struct LegSums(
    int Count, double MeanX, double MeanY, double SquaresX, double ProductXY, double SquaresY)
{
    public static LegSums Of(PathData data, int leg, double covariateCoefficient)
    {
        var (first, end) = (data.LegStart[leg], data.LegStart[leg + 1]);
        double meanX = 0, meanY = 0, squaresX = 0, products = 0, squaresY = 0;
        for (var k = first; k < end; k++)
        {
            // Welford's updates, Technometrics 4 (1962) 419-420.
            var count = k - first + 1;
            var y = data.Middle(k) - (covariateCoefficient * data.Covariate[k]);
            var (dx, dy) = (data.X[k] - meanX, y - meanY);
            meanX += dx / count;
            meanY += dy / count;
            squaresX += dx * (data.X[k] - meanX);
            products += dx * (y - meanY);
            squaresY += dy * (y - meanY);
        }

        return new(end - first, meanX, meanY, squaresX, products, squaresY);
    }
}
