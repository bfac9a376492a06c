using MathNet.Numerics.Distributions;

namespace Workshop.Domain.Statistics;

/// <summary>
/// Linear regression of a response that was seen exactly, between two ends, or on one side of one end only, by maximum
/// likelihood.
/// </summary>
/// <remarks>
/// The likelihood is concave in coefficients over scale and one over scale for every log-concave law (Burridge, J. Roy.
/// Statist. Soc. B 43 (1981) 41-45, after Prekopa), so Newton's method there finds the one maximum from any start.
/// </remarks>
public static class CensoredRegression
{
    /// <summary>
    /// Fits, or says why there is no fit: fewer observations than unknowns (<see cref="NotComputableReason.TooFewPoints"/>), a
    /// redundant covariate (<see cref="NotComputableReason.CollinearCovariates"/>), a line through every bracket
    /// (<see cref="NotComputableReason.BracketsTooCoarse"/>) or through every exact point
    /// (<see cref="NotComputableReason.NoResidualVariation"/>), a coefficient bounded on one side only
    /// (<see cref="NotComputableReason.NoFiniteMaximum"/>).
    /// </summary>
    /// <param name="sample">What was observed.</param>
    /// <param name="law">The law of the errors; for the two on a log scale what is observed must lie above 0.</param>
    /// <exception cref="ArgumentException">The law is on a log scale and an upper end or an exact value is not above 0.</exception>
    public static Computed<CensoredRegressionFit> Fit(CensoredSample sample, ErrorLaw law = ErrorLaw.Normal)
    {
        ArgumentNullException.ThrowIfNull(sample);
        if (law == ErrorLaw.Normal)
        {
            return CensoredSearch.Run(sample, StandardLaw.Of(law), 0);
        }

        if (sample.Upper.Any(end => end <= 0))
        {
            throw new ArgumentException("On a log scale every upper end and every exact value must lie above 0.", nameof(sample));
        }

        // An exact value has a density by its own unit, which is that of its logarithm over the value.
        var densities = sample.Lower.Zip(sample.Upper).Where(ends => ends.First == ends.Second).Sum(ends => -Math.Log(ends.First));
        return CensoredSearch.Run(sample.Logarithms(), StandardLaw.Of(law), densities);
    }

    /// <summary>
    /// The limits of one coefficient at which the log-likelihood, maximised over all else, has fallen by half the quantile of
    /// chi squared on one degree of freedom: unlike an estimate and its standard error, it needs no symmetry.
    /// </summary>
    /// <param name="sample">What was observed.</param>
    /// <param name="coefficient">Which coefficient, counted from 0.</param>
    /// <param name="confidence">Two-sided, between 0 and 1.</param>
    /// <returns>The interval; a reason where there is no fit, or where a limit is not reached within 1,000 standard errors.</returns>
    public static Computed<ProfileInterval> Profile(CensoredSample sample, int coefficient, double confidence)
    {
        ArgumentNullException.ThrowIfNull(sample);
        ArgumentOutOfRangeException.ThrowIfNegative(coefficient);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(coefficient, sample.Coefficients);
        Guard.Confidence(confidence);
        return Fit(sample).Then(fit => ProfileInterval.Find(
            fit.Coefficients[coefficient],
            fit.LogLikelihood,
            confidence,
            value => Fit(sample.Holding(coefficient, value)).Then<double>(held => held.LogLikelihood)));
    }
}

/// <summary>A censored regression fitted by maximum likelihood.</summary>
/// <param name="Count">How many observations.</param>
/// <param name="Coefficients">In the order of the sample's columns; on the log scale for the laws of logarithms.</param>
/// <param name="Scale">Scale of the errors: their standard deviation where they are normal. No correction for few observations.</param>
/// <param name="LogScaleStandardError">Standard error of the logarithm of the scale.</param>
/// <param name="LogLikelihood">Probabilities of the brackets, densities of the exact values.</param>
/// <param name="Iterations">Newton steps taken.</param>
public sealed record CensoredRegressionFit(
    int Count,
    IReadOnlyList<LikelihoodEstimate> Coefficients,
    double Scale,
    double LogScaleStandardError,
    double LogLikelihood,
    int Iterations);

/// <summary>Limits of a parameter from its profile likelihood.</summary>
/// <param name="Estimate">Where the likelihood is greatest.</param>
/// <param name="Lower">Below the estimate.</param>
/// <param name="Upper">Above the estimate.</param>
/// <param name="Confidence">Two-sided, between 0 and 1.</param>
public sealed record ProfileInterval(double Estimate, double Lower, double Upper, double Confidence)
{
    private const double FurthestInStandardErrors = 1000;

    /// <summary>Walks out from the estimate to either side and closes in on the fall by Illinois false position.</summary>
    internal static Computed<ProfileInterval> Find(
        LikelihoodEstimate estimate, double maximum, double confidence, Func<double, Computed<double>> profile)
    {
        var root = Normal.InvCDF(0, 1, (1 + confidence) / 2);
        var lower = Side(-1);
        return lower.Then(below => Side(1).Then<ProfileInterval>(
            above => new ProfileInterval(estimate.Value, below, above, confidence)));

        // The square root of twice the fall is nearly straight in the parameter.
        Computed<double> Beyond(double value) =>
            profile(value).Then<double>(log => Math.Sqrt(Math.Max(0, 2 * (maximum - log))) - root);

        Computed<double> Side(int sign)
        {
            var (inner, atInner) = (estimate.Value, -root);
            var reach = root;
            while (true)
            {
                if (reach > FurthestInStandardErrors)
                {
                    return new NotComputable(
                        NotComputableReason.NoFiniteMaximum,
                        $"The likelihood does not fall enough within {FurthestInStandardErrors} standard errors of {estimate.Value}.");
                }

                var outer = estimate.Value + (sign * reach * estimate.StandardError);
                var at = Beyond(outer);
                if (!at.HasValue || at.Value >= 0)
                {
                    return at.Then(atOuter => Between(inner, atInner, outer, atOuter));
                }

                (inner, atInner) = (outer, at.Value);
                reach *= 1.5;
            }
        }

        Computed<double> Between(double inner, double atInner, double outer, double atOuter)
        {
            for (var step = 0; step < 60 && Math.Abs(outer - inner) > 1e-10 * estimate.StandardError; step++)
            {
                var middle = outer - (atOuter * (outer - inner) / (atOuter - atInner));
                var at = Beyond(middle);
                if (!at.HasValue || Math.Abs(at.Value) < 1e-9)
                {
                    return at.Then<double>(_ => middle);
                }

                // The new point takes the place of the one on its side; the one that stays twice is halved.
                (inner, atInner, outer, atOuter) = at.Value > 0 == atOuter > 0
                    ? (inner, atInner / 2, middle, at.Value)
                    : (outer, atOuter, middle, at.Value);
            }

            return outer;
        }
    }
}
