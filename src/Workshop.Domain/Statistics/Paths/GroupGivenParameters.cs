namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// One group's slope and the true value of its last leg, jointly, after its readings and given the parameters: see
/// <see cref="GroupPosterior"/>.
/// </summary>
/// <remarks>
/// Probabilities are sums over slopes of the level's density integrated to the limit. The further x lies from the readings, the
/// more a step of the slope moves the value; slopes are then put in between, with the level's law interpolated, so that no sum
/// ever amounts to a count of nodes.
/// </remarks>
internal sealed class GroupGivenParameters
{
    /// <summary>A power of 2.</summary>
    private const int MostParts = 32;

    private const int PartsForQuantiles = 8;

    private readonly LevelDensities levels;
    private readonly double[] logs;
    private readonly double[] means;
    private readonly double[] deviations;
    private readonly double first;
    private readonly double step;
    private readonly double origin;
    private readonly double unit;
    private readonly double sigma;

    /// <summary>Weights of the slopes for 1, 2, 4 ... parts of a step, as far as they were asked for.</summary>
    private readonly double[]?[] tables = new double[]?[int.Log2(MostParts) + 1];
    private double[] weights;
    private int parts;

    /// <summary>Takes what the builder found.</summary>
    /// <param name="levels">Density of the level for one slope after the other.</param>
    /// <param name="logs">Log posterior density of the slopes.</param>
    /// <param name="first">The first slope.</param>
    /// <param name="step">Distance of the slopes; 0 where there is one only.</param>
    /// <param name="origin">The value at x = 0 for a level at the mean of its class.</param>
    /// <param name="unit">Standard deviation of the class of levels.</param>
    /// <param name="sigma">Standard deviation of a reading.</param>
    public GroupGivenParameters(
        LevelDensities levels, double[] logs, double first, double step, double origin, double unit, double sigma)
    {
        this.levels = levels;
        this.logs = logs;
        this.first = first;
        this.step = step;
        this.origin = origin;
        this.unit = unit;
        this.sigma = sigma;
        means = new double[logs.Length];
        deviations = new double[logs.Length];
        for (var row = 0; row < logs.Length; row++)
        {
            means[row] = unit * levels.Mean(row);
            deviations[row] = unit * levels.Deviation(row);
        }

        weights = [];
        Take(1);
        (SlopeMean, SlopeDeviation, LevelMean, LevelVariance, Covariance) = Moments();
    }

    /// <summary>Posterior mean of the slope.</summary>
    public double SlopeMean { get; }

    /// <summary>Posterior standard deviation of the slope.</summary>
    public double SlopeDeviation { get; }

    private double LevelMean { get; }

    private double LevelVariance { get; }

    private double Covariance { get; }

    /// <summary>Posterior mean of the true value.</summary>
    /// <param name="x">Where, along the last leg.</param>
    public double MeanAt(double x) => LevelMean + (SlopeMean * x);

    /// <summary>Posterior standard deviation of the true value.</summary>
    /// <param name="x">Where, along the last leg.</param>
    public double DeviationAt(double x) =>
        Math.Sqrt(Math.Max(0, LevelVariance + (2 * x * Covariance) + (x * x * SlopeDeviation * SlopeDeviation)));

    /// <summary>Posterior covariance of the true value and the slope.</summary>
    /// <param name="x">Where, along the last leg.</param>
    public double CovarianceAt(double x) => Covariance + (x * SlopeDeviation * SlopeDeviation);

    /// <summary>The probability that the true value is below a limit.</summary>
    /// <param name="x">Where, along the last leg.</param>
    /// <param name="limit">The limit; infinities allowed.</param>
    public double ProbabilityBelow(double x, double limit) => Over([x], (slope, row, share) =>
        Below(row, share, limit - (slope * x), Smoothing(x)));

    /// <summary>
    /// The probability that the true value has left its limits by x: that it is outside there, or was where the count begins.
    /// A line that is inside at both is inside in between.
    /// </summary>
    /// <param name="from">Where the count begins, along the last leg.</param>
    /// <param name="x">Not below <paramref name="from"/>.</param>
    /// <param name="lower">Lower limit, minus infinity where there is none.</param>
    /// <param name="upper">Upper limit, infinity where there is none.</param>
    public double LeftBy(double from, double x, double lower, double upper) =>
        Over([from, x], (slope, row, share) => Left(slope, row, share, from, x, lower, upper));

    /// <summary>The probabilities of a reading at or above a lower end, and below an upper end.</summary>
    public (double Above, double Below) Predicted(double x, double lower, double upper, double variance)
    {
        var error = Math.Sqrt((sigma * sigma) + variance);
        return (
            Expected(value => NormalTails.UpperTail((lower - value) / error)),
            Expected(value => NormalTails.UpperTail((value - upper) / error)));

        double Expected(Func<double, double> probability) => Over([x], (slope, row, share) =>
        {
            var mean = origin + (slope * x) + SmoothTable.Between(means, row, share);
            var deviation = SmoothTable.Between(deviations, row, share);
            return levels.Expect(share < 0.5 ? row : row + 1, z => probability(mean + (deviation * z)));
        });
    }

    /// <summary>The probability of having left the limits at each of <see cref="Slopes"/>, as many as the outlook asks for.</summary>
    public double[] LeftAtSlopes(Outlook outlook)
    {
        Refine([outlook.From, outlook.X]);
        return [.. Enumerable.Range(0, weights.Length).Select(i =>
        {
            var (slope, row, share) = At(i);
            return Left(slope, row, share, outlook.From, outlook.X, outlook.Lower, outlook.Upper);
        })];
    }

    /// <summary>The slopes that sums are taken over at present, with the logarithm of their weights.</summary>
    public (double Slope, double LogWeight)[] Slopes() =>
        [.. Enumerable.Range(0, weights.Length).Select(i =>
        {
            var (slope, row, share) = At(i);
            return (slope, SmoothTable.Between(logs, row, share));
        })];

    private double Left(double slope, int row, double share, double from, double x, double lower, double upper)
    {
        var smoothing = Math.Max(Smoothing(from), Smoothing(x));
        var least = lower - (slope * (slope < 0 ? x : from));
        var most = upper - (slope * (slope < 0 ? from : x));
        var inside = Below(row, share, most, smoothing) - Below(row, share, least, smoothing);
        return 1 - Math.Max(0, inside);
    }

    /// <summary>Sum over slopes, as closely spaced as the values of x ask for.</summary>
    private double Over(ReadOnlySpan<double> x, Func<double, int, double, double> function)
    {
        Refine(x);
        var sum = 0.0;
        for (var i = 0; i < weights.Length; i++)
        {
            var (slope, row, share) = At(i);
            sum += weights[i] * function(slope, row, share);
        }

        return Math.Clamp(sum, 0, 1);
    }

    /// <summary>Spaces the slopes as closely as the values of x ask for.</summary>
    private void Refine(ReadOnlySpan<double> x)
    {
        var needed = 1;
        foreach (var place in x)
        {
            needed = Math.Max(needed, PartsAt(place));
        }

        Take(needed);
    }

    private (double Slope, int Row, double Share) At(int index)
    {
        var row = index / parts;
        var share = (double)(index - (row * parts)) / parts;
        return (first + (step * (row + share)), row, share);
    }

    /// <summary>How many parts a step of the slope needs so that one part moves the value by no more than the level spreads.</summary>
    private int PartsAt(double x)
    {
        if (step == 0)
        {
            return 1;
        }

        var middle = logs.Length / 2;
        var move = Math.Abs((step * x) + means[middle] - means[middle - 1]);
        var ratio = move / Math.Max(deviations[middle], 1e-300);
        return ratio >= MostParts ? MostParts : Math.Max(1, (int)Math.Ceiling(ratio));
    }

    /// <summary>
    /// A level that spreads less than the value moves between neighbouring slopes is spread as far as that: an error of second
    /// order in the parts of a step, where a count of slopes would be wrong by whole parts.
    /// </summary>
    private double Smoothing(double x) => step == 0 ? 0 : Math.Abs(step * x / parts) * (parts == MostParts ? 1 : 0);

    /// <summary>Probability that origin + level is below a value, given a slope between two of the table.</summary>
    private double Below(int row, double share, double value, double smoothing)
    {
        if (double.IsInfinity(value))
        {
            return value > 0 ? 1 : 0;
        }

        var mean = origin + SmoothTable.Between(means, row, share);
        var deviation = Math.Max(SmoothTable.Between(deviations, row, share), smoothing);
        if (deviation <= 0)
        {
            return value > mean ? 1 : 0;
        }

        var z = (value - mean) / deviation;
        var below = levels.Below(row, levels.Mean(row) + (levels.Deviation(row) * z));
        return share == 0
            ? below
            : ((1 - share) * below) + (share * levels.Below(row + 1, levels.Mean(row + 1) + (levels.Deviation(row + 1) * z)));
    }

    /// <summary>What a question is answered with depends on the question alone, not on those before it.</summary>
    private void Take(int needed)
    {
        var table = int.Log2((int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)needed));
        parts = 1 << table;
        weights = tables[table] ??= Weights();
    }

    private double[] Weights()
    {
        var refined = new double[((logs.Length - 1) * parts) + 1];
        var top = logs.Max();
        var sum = 0.0;
        for (var i = 0; i < refined.Length; i++)
        {
            var (_, row, share) = At(i);
            refined[i] = Math.Exp(SmoothTable.Between(logs, row, share) - top);
            sum += refined[i];
        }

        for (var i = 0; i < refined.Length; i++)
        {
            refined[i] /= sum;
        }

        return refined;
    }

    /// <summary>The probability of a slope below a value.</summary>
    public double SlopeBelow(double slope)
    {
        if (step == 0)
        {
            return slope > first ? 1 : 0;
        }

        Take(PartsForQuantiles);
        // The sum up to a node reaches half a part past it.
        var place = ((slope - first) / step * parts) - 0.5;
        var node = (int)Math.Clamp(Math.Floor(place), -1, weights.Length - 1);
        var sum = 0.0;
        for (var i = 0; i <= node; i++)
        {
            sum += weights[i];
        }

        var next = node + 1 < weights.Length ? weights[node + 1] : 0;
        return Math.Clamp(sum + (next * Math.Clamp(place - node, 0, 1)), 0, 1);
    }

    private (double Slope, double SlopeDeviation, double Level, double LevelVariance, double Covariance) Moments()
    {
        double slope = 0, level = 0;
        for (var row = 0; row < logs.Length; row++)
        {
            slope += weights[row] * (first + (step * row));
            level += weights[row] * means[row];
        }

        double square = 0, product = 0, levelSquare = 0;
        for (var row = 0; row < logs.Length; row++)
        {
            var (db, da) = (first + (step * row) - slope, means[row] - level);
            square += weights[row] * db * db;
            product += weights[row] * db * da;
            levelSquare += weights[row] * ((da * da) + (deviations[row] * deviations[row]));
        }

        return (slope, Math.Sqrt(square), origin + level, levelSquare, product);
    }
}
