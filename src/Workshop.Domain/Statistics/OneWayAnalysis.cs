namespace Workshop.Domain.Statistics;

/// <summary>The analysis of variance of one factor.</summary>
/// <param name="AnalysisOfVariance">Between groups (explained) beside within groups (residual).</param>
/// <param name="GrandMean">Mean of all values.</param>
/// <param name="EffectiveGroupSize">The size of equal groups, or (N - sum n_i^2 / N) / (k - 1).</param>
public sealed record OneWayAnalysis(AnalysisOfVariance AnalysisOfVariance, double GrandMean, double EffectiveGroupSize)
{
    /// <summary>
    /// The variance that members of one group have about their group, with its standard error (exact for normal errors).
    /// </summary>
    public VarianceComponent WithinVariance
    {
        get
        {
            var within = AnalysisOfVariance.Residual;
            return new(
                within.MeanSquare, within.MeanSquare * Math.Sqrt(2.0 / within.DegreesOfFreedom), within.DegreesOfFreedom);
        }
    }

    /// <summary>
    /// The variance of the groups' own true means, (MS between - MS within) / group size, as the mean squares give it:
    /// below zero says that groups differ by no more than their members do. Its standard error is that of a difference
    /// of independent mean squares, exact for equal groups and normal errors, approximate otherwise.
    /// </summary>
    /// <remarks>Searle, Casella and McCulloch, Variance Components (1992), chapter 3.</remarks>
    public VarianceComponent BetweenVariance
    {
        get
        {
            var between = AnalysisOfVariance.Explained;
            var within = AnalysisOfVariance.Residual;
            var variance = (2 * Math.Pow(between.MeanSquare, 2) / between.DegreesOfFreedom)
                + (2 * Math.Pow(within.MeanSquare, 2) / within.DegreesOfFreedom);
            return new(
                (between.MeanSquare - within.MeanSquare) / EffectiveGroupSize,
                Math.Sqrt(variance) / EffectiveGroupSize,
                between.DegreesOfFreedom);
        }
    }
}

/// <summary>An estimated variance with its uncertainty.</summary>
/// <param name="Value">In the square of the unit of the values; below zero only for a difference of mean squares.</param>
/// <param name="StandardError">Same unit.</param>
/// <param name="DegreesOfFreedom">Of the mean square that it mainly rests on.</param>
public sealed record VarianceComponent(double Value, double StandardError, int DegreesOfFreedom)
{
    /// <summary>Its square root in the unit of the values, taken as zero where the variance is below zero.</summary>
    public double StandardDeviation => Math.Sqrt(Math.Max(0, Value));
}
