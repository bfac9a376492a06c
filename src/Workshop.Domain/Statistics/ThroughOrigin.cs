namespace Workshop.Domain.Statistics;

/// <summary>Ordinary least squares of y = slope x, for what is zero at zero by its nature.</summary>
public static class ThroughOrigin
{
    /// <summary>One point always lies on a line through the origin; the second tells how well.</summary>
    public const int FewestPoints = 2;

    /// <summary>
    /// Fits a line through the origin, or says why none can be fitted: fewer than two points
    /// (<see cref="NotComputableReason.TooFewPoints"/>), or all x zero (<see cref="NotComputableReason.NoSpreadInX"/>).
    /// </summary>
    /// <param name="x">Where each y was observed, in any one unit.</param>
    /// <param name="y">What was observed, in any one unit; as many as x.</param>
    /// <exception cref="ArgumentException">A value is not finite, or x and y differ in number.</exception>
    public static Computed<ProportionalLine> Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Guard.SameLength(x, y);
        Guard.Finite(x, nameof(x));
        Guard.Finite(y, nameof(y));
        if (x.Length < FewestPoints)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints,
                $"A line through the origin with its uncertainty needs {FewestPoints} points; "
                + $"there {(x.Length == 1 ? "is" : "are")} {x.Length}.");
        }

        var squaresX = Products(x, x);
        if (squaresX < 1e-200)
        {
            return new NotComputable(
                NotComputableReason.NoSpreadInX, $"All {x.Length} x are zero, so no slope can be told.");
        }

        var slope = Products(x, y) / squaresX;
        var residual = ResidualSquares(x, y, slope);
        return new ProportionalLine(
            x.Length,
            squaresX,
            slope,
            new AnalysisOfVariance(new(slope * slope * squaresX, 1), new(residual, x.Length - 1)));
    }

    private static double Products(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            sum += x[i] * y[i];
        }

        return sum;
    }

    private static double ResidualSquares(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double slope)
    {
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            var residual = y[i] - (slope * x[i]);
            sum += residual * residual;
        }

        return sum;
    }
}
