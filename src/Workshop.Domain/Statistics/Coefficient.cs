namespace Workshop.Domain.Statistics;

/// <summary>A fitted coefficient with its uncertainty.</summary>
/// <param name="Value">The estimate, in the unit of y per unit of what it multiplies.</param>
/// <param name="StandardError">Its standard error, same unit.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the residual variance behind the standard error.</param>
public sealed record Coefficient(double Value, double StandardError, double DegreesOfFreedom)
{
    /// <summary>The limits that hold the true coefficient at a two-sided confidence between 0 and 1.</summary>
    public IntervalEstimate Interval(double confidence) =>
        IntervalEstimate.FromStudentT(Value, StandardError, DegreesOfFreedom, confidence);
}
