namespace Workshop.Domain.Statistics;

/// <summary>An estimate with the limits that hold it at a stated confidence.</summary>
/// <param name="Estimate">The estimate itself, in the unit of what is estimated.</param>
/// <param name="StandardError">Its standard error, same unit; for a prediction, of the new value about the estimate.</param>
/// <param name="Lower">Lower limit, same unit.</param>
/// <param name="Upper">Upper limit, same unit.</param>
/// <param name="Confidence">Confidence of the two limits together, between 0 and 1.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the residual variance behind the standard error.</param>
public sealed record IntervalEstimate(
    double Estimate,
    double StandardError,
    double Lower,
    double Upper,
    double Confidence,
    double DegreesOfFreedom)
{
    /// <summary>Estimate plus and minus Student's t times the standard error.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="standardError">Its standard error, not negative.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, above 0.</param>
    /// <param name="confidence">Two-sided confidence, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence or the degrees of freedom are out of range.</exception>
    public static IntervalEstimate FromStudentT(
        double estimate, double standardError, double degreesOfFreedom, double confidence)
    {
        Guard.Confidence(confidence);
        var half = StudentT.TwoSidedQuantile(confidence, degreesOfFreedom) * standardError;
        return new(estimate, standardError, estimate - half, estimate + half, confidence, degreesOfFreedom);
    }
}
