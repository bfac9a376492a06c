using MathNet.Numerics.Statistics;

namespace Workshop.Domain.Statistics;

/// <summary>
/// The median of the slopes of all pairs of points: a rate that a few wrong readings do not move (up to 29 in 100).
/// </summary>
/// <remarks>
/// Theil, Proc. Kon. Ned. Akad. v. Wetensch. A 53 (1950); Sen, J. Amer. Statist. Assoc. 63 (1968) 1379-1389; the span
/// after Hollander and Wolfe, Nonparametric Statistical Methods, section 9.3.
/// </remarks>
public static class TheilSen
{
    /// <summary>Two points give one slope and no span.</summary>
    public const int FewestPoints = 3;

    /// <summary>
    /// Fits a line by the median of pairwise slopes, or says why it cannot: fewer than three points
    /// (<see cref="NotComputableReason.TooFewPoints"/>), or all x equal (<see cref="NotComputableReason.NoSpreadInX"/>).
    /// Takes time and memory in the square of the number of points.
    /// </summary>
    /// <param name="x">Where each y was observed, such as days; pairs at the same x give no slope.</param>
    /// <param name="y">What was observed, such as km.</param>
    /// <param name="confidence">Two-sided confidence wished for the span, between 0 and 1.</param>
    /// <exception cref="ArgumentException">A value is not finite, or x and y differ in number.</exception>
    public static Computed<RobustLine> Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double confidence)
    {
        Guard.SameLength(x, y);
        Guard.Finite(x, nameof(x));
        Guard.Finite(y, nameof(y));
        Guard.Confidence(confidence);
        if (x.Length < FewestPoints)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints,
                $"A slope with its span needs {FewestPoints} points; there {(x.Length == 1 ? "is" : "are")} {x.Length}.");
        }

        if (!CentredSums.HaveSpread(x))
        {
            return new NotComputable(
                NotComputableReason.NoSpreadInX, $"All {x.Length} x are {x[0]}, so no slope can be told.");
        }

        var slopes = PairwiseSlopes(x, y);
        var discordances = DiscordantPairs.UnderNoAssociation(x, slopes.Length);
        var cut = MostCutFromEachEnd(discordances, slopes.Length, confidence);
        var slope = SortedArrayStatistics.Median(slopes);
        return new RobustLine(
            slope,
            slopes[cut],
            slopes[^(cut + 1)],
            confidence,
            Math.Max(0, 1 - (2 * discordances.AtMost(cut))),
            MedianOffset(x, y, slope),
            x.Length,
            slopes.Length);
    }

    /// <summary>
    /// The slope alone, without its span: the median of pairwise slopes of two points or more, 0 where all x are equal.
    /// </summary>
    /// <param name="x">Where each y was observed.</param>
    /// <param name="y">What was observed.</param>
    /// <exception cref="ArgumentException">A value is not finite, or x and y differ in number.</exception>
    public static double Slope(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Guard.SameLength(x, y);
        Guard.Finite(x, nameof(x));
        Guard.Finite(y, nameof(y));
        var slopes = PairwiseSlopes(x, y);
        return slopes.Length == 0 ? 0 : SortedArrayStatistics.Median(slopes);
    }

    private static double[] PairwiseSlopes(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var slopes = new List<double>(x.Length * (x.Length - 1) / 2);
        for (var i = 0; i < x.Length; i++)
        {
            for (var j = i + 1; j < x.Length; j++)
            {
                if (x[i] != x[j])
                {
                    slopes.Add((y[j] - y[i]) / (x[j] - x[i]));
                }
            }
        }

        slopes.Sort();
        return [.. slopes];
    }

    /// <summary>
    /// How many slopes may be left off at each end while the span keeps the confidence. The true slope lies below the
    /// slope left standing at the lower end only if at most that many pairs are discordant about it.
    /// </summary>
    private static int MostCutFromEachEnd(DiscordantPairs discordances, int slopes, double confidence)
    {
        var cut = 0;
        while (cut + 1 < slopes / 2 && 1 - (2 * discordances.AtMost(cut + 1)) >= confidence)
        {
            cut++;
        }

        return cut;
    }

    private static double MedianOffset(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double slope)
    {
        var offsets = new double[x.Length];
        for (var i = 0; i < offsets.Length; i++)
        {
            offsets[i] = y[i] - (slope * x[i]);
        }

        Array.Sort(offsets);
        return SortedArrayStatistics.Median(offsets);
    }
}

/// <summary>A line by the median of pairwise slopes, with the span of its slope.</summary>
/// <param name="Slope">Median of the pairwise slopes, in the unit of y per unit of x.</param>
/// <param name="Lower">Lower end of the span of the slope.</param>
/// <param name="Upper">Upper end of the span of the slope.</param>
/// <param name="ConfidenceWished">What was asked for, two-sided.</param>
/// <param name="Confidence">
/// What the span has. Steps are coarse where points are few, so it is as a rule above what was asked for; below it
/// where even the span of all slopes falls short (three points: 2/3).
/// </param>
/// <param name="Intercept">Median of y - slope x.</param>
/// <param name="Count">How many points.</param>
/// <param name="Pairs">How many pairs had a slope; takes the place of degrees of freedom.</param>
public sealed record RobustLine(
    double Slope,
    double Lower,
    double Upper,
    double ConfidenceWished,
    double Confidence,
    double Intercept,
    int Count,
    int Pairs)
{
    /// <summary>True when the span has the confidence that was asked for.</summary>
    public bool HasConfidenceWished => Confidence >= ConfidenceWished;

    /// <summary>Height of the line at an x.</summary>
    public double At(double x) => Intercept + (Slope * x);
}
