namespace Workshop.Domain.Statistics;

/// <summary>Ordinary least squares of y = intercept + slope x, where only y is uncertain, equally at every x.</summary>
public static class LinearRegression
{
    /// <summary>Two points always lie on a line; the third tells how well.</summary>
    public const int FewestPoints = 3;

    /// <summary>
    /// Fits a straight line, or says why none can be fitted: fewer than three points
    /// (<see cref="NotComputableReason.TooFewPoints"/>), or all x equal (<see cref="NotComputableReason.NoSpreadInX"/>).
    /// </summary>
    /// <param name="x">Where each y was observed, in any one unit.</param>
    /// <param name="y">What was observed, in any one unit; as many as x.</param>
    /// <exception cref="ArgumentException">A value is not finite, or x and y differ in number.</exception>
    public static Computed<StraightLine> Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Guard.SameLength(x, y);
        Guard.Finite(x, nameof(x));
        Guard.Finite(y, nameof(y));
        if (x.Length < FewestPoints)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints,
                $"A straight line with its uncertainty needs {FewestPoints} points; there {(x.Length == 1 ? "is" : "are")} {x.Length}.");
        }

        if (!CentredSums.HaveSpread(x))
        {
            return new NotComputable(
                NotComputableReason.NoSpreadInX, $"All {x.Length} x are {x[0]}, so no slope can be told.");
        }

        return LeastSquares(x, y);
    }

    /// <summary>
    /// Everything about the means, so that x far from zero costs no digits, and the residuals one by one, so that a
    /// close fit is not the difference of two large sums.
    /// </summary>
    private static StraightLine LeastSquares(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var meanX = CentredSums.Mean(x);
        var meanY = CentredSums.Mean(y);
        var squaresX = CentredSums.Squares(x, meanX);

        // Equal y may miss their own mean by a rounding; that is not a slope.
        var flat = !CentredSums.HaveSpread(y);
        var slope = flat ? 0 : CentredSums.Products(x, meanX, y, meanY) / squaresX;
        var residual = flat ? 0 : ResidualSquares(x, meanX, y, meanY, slope);
        return new StraightLine(
            x.Length,
            meanX,
            meanY,
            squaresX,
            slope,
            new AnalysisOfVariance(new(slope * slope * squaresX, 1), new(residual, x.Length - 2)));
    }

    private static double ResidualSquares(
        ReadOnlySpan<double> x, double meanX, ReadOnlySpan<double> y, double meanY, double slope)
    {
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            var residual = y[i] - meanY - (slope * (x[i] - meanX));
            sum += residual * residual;
        }

        return sum;
    }
}
