namespace Workshop.Domain.Statistics;

/// <summary>Mean, spread and lag-1 autocorrelation of values in the order in which they were taken.</summary>
/// <param name="Count">How many values, 2 or more.</param>
/// <param name="Mean">Arithmetic mean, with its standard error and degrees of freedom.</param>
/// <param name="StandardDeviation">With the divisor n - 1, in the unit of the values.</param>
/// <param name="Lag1Autocorrelation">
/// Sum of products of neighbouring deviations over the sum of squared deviations, -1 to 1; far from zero the standard
/// error of the mean, which takes the values as independent, does not hold. A reason instead where all values are equal.
/// </param>
public sealed record UnivariateSummary(
    int Count, Coefficient Mean, double StandardDeviation, Computed<double> Lag1Autocorrelation)
{
    /// <summary>One value has no spread.</summary>
    public const int FewestPoints = 2;

    /// <summary>Degrees of freedom of the standard deviation, n - 1.</summary>
    public int DegreesOfFreedom => Count - 1;

    /// <summary>Summarises values, or says that there are too few.</summary>
    /// <param name="values">In the order in which they were taken.</param>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static Computed<UnivariateSummary> Of(ReadOnlySpan<double> values)
    {
        Guard.Finite(values, nameof(values));
        if (values.Length < FewestPoints)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints,
                $"A mean with its uncertainty needs {FewestPoints} values; there {(values.Length == 1 ? "is" : "are")} {values.Length}.");
        }

        var mean = CentredSums.Mean(values);
        var spread = CentredSums.HaveSpread(values);
        var squares = spread ? CentredSums.Squares(values, mean) : 0;
        var deviation = Math.Sqrt(squares / (values.Length - 1));
        return new UnivariateSummary(
            values.Length,
            new Coefficient(mean, deviation / Math.Sqrt(values.Length), values.Length - 1),
            deviation,
            spread
                ? NeighbourProducts(values, mean) / squares
                : new NotComputable(
                    NotComputableReason.NoSpreadInY, $"All {values.Length} values are {values[0]}, so neighbours cannot be compared."));
    }

    private static double NeighbourProducts(ReadOnlySpan<double> values, double mean)
    {
        var sum = 0.0;
        for (var i = 1; i < values.Length; i++)
        {
            sum += (values[i - 1] - mean) * (values[i] - mean);
        }

        return sum;
    }
}
