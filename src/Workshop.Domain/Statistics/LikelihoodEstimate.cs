using MathNet.Numerics.Distributions;

namespace Workshop.Domain.Statistics;

/// <summary>
/// A parameter fitted by maximum likelihood, with the standard error that the curvature of the log-likelihood gives it.
/// </summary>
/// <param name="Value">The estimate.</param>
/// <param name="StandardError">From the inverse of the observed information, same unit; above 0.</param>
public sealed record LikelihoodEstimate(double Value, double StandardError)
{
    /// <summary>The limits that hold the true value at a two-sided confidence, by the normal distribution of large samples.</summary>
    /// <param name="confidence">Between 0 and 1.</param>
    public (double Lower, double Upper) Interval(double confidence)
    {
        Guard.Confidence(confidence);
        var half = Normal.InvCDF(0, 1, (1 + confidence) / 2) * StandardError;
        return (Value - half, Value + half);
    }
}
