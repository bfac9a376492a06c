namespace Workshop.Domain.Statistics.Paths;

/// <summary>A likelihood ratio test of straight lines against lines with one curvature in common.</summary>
/// <param name="Coefficient">Of x squared, with its standard error.</param>
/// <param name="LikelihoodRatio">Twice the gain in log-likelihood, 0 or above.</param>
public sealed record CurvatureTest(LikelihoodEstimate Coefficient, double LikelihoodRatio)
{
    /// <summary>The probability of so large a ratio by chance alone: of chi squared on one degree of freedom.</summary>
    public double PValue => 2 * NormalTails.UpperTail(Math.Sqrt(LikelihoodRatio));
}
