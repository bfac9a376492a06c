namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// What is known of one group after its readings: its slope, and the true value target + level + slope x of its last leg,
/// jointly. All x count along that leg. The error of a reading is no part of the true value. Not for several threads at once.
/// </summary>
public sealed class GroupPosterior
{
    /// <summary>Beyond about eight standard deviations one more says nothing.</summary>
    private const double LeastMiddle = 1e-15;

    /// <summary>Standard deviations about the mean.</summary>
    private static readonly double[] CurvePlaces = [-3, -2, -1.4, -0.9, -0.45, 0, 0.45, 0.9, 1.4, 2, 3];

    private readonly IReadOnlyList<(double Weight, GroupGivenParameters Given)> parts;

    /// <summary>Takes the posterior given each of some parameters; their weights sum to 1.</summary>
    internal GroupPosterior(IReadOnlyList<(double Weight, GroupGivenParameters Given)> parts)
    {
        this.parts = parts;
        SlopeMean = Average(given => given.SlopeMean);
        SlopeDeviation = Math.Sqrt(Covariance(given => given.SlopeMean, given => given.SlopeMean, given => given.SlopeDeviation * given.SlopeDeviation));
    }

    /// <summary>Posterior mean of the slope.</summary>
    public double SlopeMean { get; }

    /// <summary>Posterior standard deviation of the slope.</summary>
    public double SlopeDeviation { get; }

    /// <summary>Posterior mean of the true value.</summary>
    /// <param name="x">Where, along the last leg.</param>
    public double MeanAt(double x) => Average(given => given.MeanAt(x));

    /// <summary>Posterior standard deviation of the true value.</summary>
    /// <param name="x">Where, along the last leg.</param>
    public double DeviationAt(double x) => Math.Sqrt(
        Covariance(given => given.MeanAt(x), given => given.MeanAt(x), given => given.DeviationAt(x) * given.DeviationAt(x)));

    /// <summary>Posterior covariance of the true value and the slope.</summary>
    /// <param name="x">Where, along the last leg.</param>
    public double CovarianceAt(double x) =>
        Covariance(given => given.MeanAt(x), given => given.SlopeMean, given => given.CovarianceAt(x));

    /// <summary>The probability that the true value is below a limit.</summary>
    /// <param name="x">Where, along the last leg.</param>
    /// <param name="limit">The limit; infinities allowed.</param>
    public double ProbabilityBelow(double x, double limit) => Average(given => given.ProbabilityBelow(x, limit));

    /// <summary>The probability that the true value is outside two limits.</summary>
    /// <param name="x">Where, along the last leg.</param>
    /// <param name="lower">Lower limit, minus infinity where there is none.</param>
    /// <param name="upper">Upper limit, infinity where there is none.</param>
    public double ProbabilityOutside(double x, double lower, double upper) => LeftBy(x, x, lower, upper);

    /// <summary>
    /// The probability that the true value has left its limits by x: that it is outside there, or was where the count begins.
    /// A line that is inside at both is inside in between.
    /// </summary>
    /// <param name="from">Where the count begins, along the last leg.</param>
    /// <param name="x">Not below <paramref name="from"/>.</param>
    /// <param name="lower">Lower limit, minus infinity where there is none.</param>
    /// <param name="upper">Upper limit, infinity where there is none.</param>
    public double LeftBy(double from, double x, double lower, double upper) =>
        Average(given => given.LeftBy(from, x, lower, upper));

    /// <summary>
    /// The x at which the probability of having left the limits (<see cref="LeftBy"/>) reaches each of some probabilities, to a
    /// millionth of the reach; null where it does not within reach.
    /// </summary>
    /// <param name="from">Where the count begins, along the last leg.</param>
    /// <param name="lower">Lower limit, minus infinity where there is none.</param>
    /// <param name="upper">Upper limit, infinity where there is none.</param>
    /// <param name="probabilities">Rising, between 0 and 1.</param>
    /// <param name="reach">How far beyond <paramref name="from"/> is looked, above 0.</param>
    public double?[] LeavingDistances(
        double from, double lower, double upper, ReadOnlySpan<double> probabilities, double reach) =>
        LeavingDistance.Find(x => LeftBy(from, x, lower, upper), from, probabilities, reach);

    /// <summary>The value below which the true value lies with a given probability.</summary>
    /// <param name="x">Where, along the last leg.</param>
    /// <param name="probability">Between 0 and 1.</param>
    public double ValueQuantile(double x, double probability)
    {
        Guard.Confidence(probability);
        var spread = Math.Max(DeviationAt(x), 1e-12);
        return Quantile.Find(value => ProbabilityBelow(x, value), MeanAt(x), spread, probability);
    }

    /// <summary>
    /// Several of <see cref="ValueQuantile"/> at once, for pictures: by a smooth curve through the probabilities at a few values, right to
    /// about a hundredth of a standard deviation.
    /// </summary>
    /// <param name="x">Where, along the last leg.</param>
    /// <param name="probabilities">Each between 0.01 and 0.99.</param>
    public double[] ValueQuantiles(double x, IReadOnlyList<double> probabilities)
    {
        ArgumentNullException.ThrowIfNull(probabilities);
        var (mean, spread) = (MeanAt(x), Math.Max(DeviationAt(x), 1e-12));
        var scores = new List<double>();
        var values = new List<double>();
        foreach (var place in CurvePlaces)
        {
            var value = mean + (place * spread);
            var score = Quantile.Score(ProbabilityBelow(x, value));
            if (scores.Count == 0 || score > scores[^1])
            {
                scores.Add(score);
                values.Add(value);
            }
        }

        if (scores.Count < CurvePlaces.Length)
        {
            return [.. probabilities.Select(p => ValueQuantile(x, p))];
        }

        var curve = MathNet.Numerics.Interpolation.CubicSpline.InterpolatePchipSorted(scores.ToArray(), values.ToArray());
        return [.. probabilities.Select(p => curve.Interpolate(Quantile.Score(p)))];
    }

    /// <summary>The slope below which the group's slope lies with a given probability.</summary>
    /// <param name="probability">Between 0 and 1.</param>
    public double SlopeQuantile(double probability)
    {
        Guard.Confidence(probability);
        return SlopeDeviation > 0
            ? Quantile.Find(slope => Average(given => given.SlopeBelow(slope)), SlopeMean, SlopeDeviation, probability)
            : SlopeMean;
    }

    /// <summary>
    /// How improbable a new reading is, two-sided: twice the smaller of the probabilities of a reading at or above its lower end
    /// and below its upper end, at most 1. Small where the reading contradicts those before it.
    /// </summary>
    /// <param name="x">Where it was taken, along the last leg.</param>
    /// <param name="lower">Its lower end, minus infinity where it is open.</param>
    /// <param name="upper">Its upper end, infinity where it is open.</param>
    /// <param name="variance">Known variance of the reading beside sigma squared.</param>
    public double PredictiveP(double x, double lower, double upper, double variance = 0)
    {
        var (above, below) = Predicted(x, lower, upper, variance);
        return Math.Min(1, 2 * Math.Min(above, below));
    }

    /// <summary>
    /// How many standard deviations a new reading lies above what was to be expected: the normal deviate of the middle between
    /// the probabilities of a reading below its lower end and below its upper end. It is standard normal, but for the coarseness of
    /// the bracket, where the reading comes from the same line.
    /// </summary>
    /// <param name="x">Where it was taken, along the last leg.</param>
    /// <param name="lower">Its lower end, minus infinity where it is open.</param>
    /// <param name="upper">Its upper end, infinity where it is open.</param>
    /// <param name="variance">Known variance of the reading beside sigma squared.</param>
    public double PredictiveScore(double x, double lower, double upper, double variance = 0)
    {
        var (above, below) = Predicted(x, lower, upper, variance);
        return NormalTails.Deviate(Math.Clamp((1 - above + below) / 2, LeastMiddle, 1 - LeastMiddle));
    }

    private (double Above, double Below) Predicted(double x, double lower, double upper, double variance)
    {
        double above = 0, below = 0;
        foreach (var (weight, given) in parts)
        {
            var predicted = given.Predicted(x, lower, upper, variance);
            above += weight * predicted.Above;
            below += weight * predicted.Below;
        }

        return (above, below);
    }

    private double Average(Func<GroupGivenParameters, double> of)
    {
        var sum = 0.0;
        foreach (var (weight, given) in parts)
        {
            sum += weight * of(given);
        }

        return sum;
    }

    /// <summary>Of two quantities with a mean and a covariance given each of the parameters.</summary>
    private double Covariance(
        Func<GroupGivenParameters, double> first,
        Func<GroupGivenParameters, double> second,
        Func<GroupGivenParameters, double> given)
    {
        var (one, other) = (Average(first), Average(second));
        return Average(part => given(part) + ((first(part) - one) * (second(part) - other)));
    }
}
