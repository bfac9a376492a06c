namespace Workshop.Domain.Statistics;

/// <summary>
/// The inner loop of everything here that sums squares: sums about the mean, by the corrected two-pass algorithm
/// (Chan, Golub and LeVeque, The American Statistician 37 (1983) 242-247), never the difference of two large sums.
/// </summary>
internal static class CentredSums
{
    /// <summary>Half the distance from 1 to the next double.</summary>
    private const double UnitRoundOff = 1.1102230246251565e-16;

    /// <summary>
    /// The mean, from deviations about the first value, corrected by the mean of the deviations that it leaves.
    /// Values that share their leading digits lose none of the others.
    /// </summary>
    public static double Mean(ReadOnlySpan<double> values)
    {
        var origin = values[0];
        var shifted = 0.0;
        foreach (var value in values)
        {
            shifted += value - origin;
        }

        var mean = origin + (shifted / values.Length);
        var left = 0.0;
        foreach (var value in values)
        {
            left += value - mean;
        }

        return mean + (left / values.Length);
    }

    /// <summary>The sum of the products of the deviations of x and y from their means.</summary>
    public static double Products(ReadOnlySpan<double> x, double meanX, ReadOnlySpan<double> y, double meanY)
    {
        double sum = 0, leftX = 0, leftY = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var dx = x[i] - meanX;
            var dy = y[i] - meanY;
            sum += dx * dy;
            leftX += dx;
            leftY += dy;
        }

        return sum - (leftX * leftY / x.Length);
    }

    /// <summary>The sum of squared deviations from the mean.</summary>
    public static double Squares(ReadOnlySpan<double> values, double mean) =>
        Math.Max(0, Products(values, mean, values, mean));

    /// <summary>
    /// True when the values differ by more than rounding of their own size could make them differ.
    /// </summary>
    public static bool HaveSpread(ReadOnlySpan<double> values)
    {
        var smallest = double.PositiveInfinity;
        var largest = double.NegativeInfinity;
        foreach (var value in values)
        {
            smallest = Math.Min(smallest, value);
            largest = Math.Max(largest, value);
        }

        // Squares of spreads below 1e-100 would leave the range of a double.
        var rounding = 8 * UnitRoundOff * Math.Max(Math.Abs(smallest), Math.Abs(largest));
        return largest - smallest > Math.Max(rounding, 1e-100);
    }
}
