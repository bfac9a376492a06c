namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// Straight lines through bracketed readings: a level for each leg, a slope for each group, levels and slopes random, by
/// maximum marginal likelihood. See <see cref="PathParameters"/> for the model and <see cref="PathData"/> for the words.
/// </summary>
public static class IntervalPaths
{
    /// <summary>
    /// Fits, or says why there is no fit: too few readings (<see cref="NotComputableReason.TooFewPoints"/>), no slope to be told
    /// (<see cref="NotComputableReason.NoSpreadInX"/>), sigma at 0 (<see cref="NotComputableReason.BracketsTooCoarse"/>, or
    /// <see cref="NotComputableReason.NoResidualVariation"/> where readings are exact), a likelihood without a top
    /// (<see cref="NotComputableReason.NoFiniteMaximum"/>). A deviation of 0 is a result, with a remark.
    /// </summary>
    /// <param name="data">The readings.</param>
    /// <param name="options">What is estimated; none: means, deviations and sigma.</param>
    /// <param name="cancellation">Ends the search early.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static Computed<PathFit> Fit(PathData data, PathOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(data);
        return new PathFitting(data, options ?? new PathOptions(), cancellation).Run();
    }

    /// <summary>
    /// The maximum likelihood fit of the brackets' middles as if they were exact, its sigma less what the width of the brackets
    /// adds: where <see cref="Fit"/> begins. Deviations are kept a little off 0.
    /// </summary>
    /// <param name="data">The readings.</param>
    /// <param name="options">What is estimated; none: means, deviations and sigma.</param>
    public static Computed<PathParameters> FitMiddles(PathData data, PathOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(data);
        return new PathFitting(data, options ?? new PathOptions(), CancellationToken.None).Middles();
    }

    /// <summary>
    /// Whether the lines of one class of slopes are curved: the likelihood with one coefficient of x squared for the class
    /// against that without, twice the logarithm of their ratio compared with chi squared on one degree of freedom.
    /// </summary>
    /// <param name="data">The readings.</param>
    /// <param name="straight">The fit of straight lines.</param>
    /// <param name="slopeClass">Which class of slopes.</param>
    /// <param name="options">What the straight fit was made with.</param>
    /// <param name="cancellation">Ends the search early.</param>
    /// <returns>The test; a reason where the data cannot tell a curvature.</returns>
    public static Computed<CurvatureTest> TestCurvature(
        PathData data, PathFit straight, int slopeClass, PathOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(straight);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(slopeClass, data.SlopeClasses);
        var curved = (options ?? new PathOptions()) with
        {
            CurvedSlopeClass = slopeClass, Start = straight.Parameters, StandardErrors = true,
        };
        return Fit(data, curved, cancellation).Then(fit => fit.StandardErrors.Then<CurvatureTest>(errors => new CurvatureTest(
            new LikelihoodEstimate(fit.Parameters.Curvature[slopeClass], errors.Curvature[slopeClass]),
            Math.Max(0, 2 * (fit.LogLikelihood - straight.LogLikelihood)))));
    }

    /// <summary>
    /// The coefficient of the covariate with the limits of its profile likelihood: everything else is fitted again for every
    /// value that is tried.
    /// </summary>
    /// <param name="data">The readings with their covariates.</param>
    /// <param name="confidence">Two-sided, between 0 and 1.</param>
    /// <param name="options">What else is estimated; its coefficient is where the search begins.</param>
    /// <param name="cancellation">Ends the search early.</param>
    public static Computed<ProfileInterval> ProfileCovariate(
        PathData data, double confidence, PathOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(data);
        Guard.Confidence(confidence);
        var free = (options ?? new PathOptions()) with { EstimateCovariate = true, StandardErrors = true };
        return Fit(data, free, cancellation).Then(fit => fit.StandardErrors.Then(errors => ProfileInterval.Find(
            new LikelihoodEstimate(fit.Parameters.CovariateCoefficient, errors.CovariateCoefficient),
            fit.LogLikelihood,
            confidence,
            value => Fit(
                data,
                free with
                {
                    EstimateCovariate = false,
                    CovariateCoefficient = value,
                    StandardErrors = false,
                    Start = fit.Parameters with { CovariateCoefficient = value },
                },
                cancellation).Then<double>(held => held.LogLikelihood))));
    }

    /// <summary>The marginal log-likelihood at given parameters: probabilities of the brackets, densities of exact readings.</summary>
    /// <param name="data">The readings.</param>
    /// <param name="parameters">As many means and deviations as the data have classes.</param>
    /// <param name="fine">Whether to integrate to about 13 digits, at three times the cost; else to about 8.</param>
    /// <param name="cancellation">Ends the work early.</param>
    public static double LogLikelihood(
        PathData data, PathParameters parameters, bool fine = false, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(parameters);
        var layout = new ParameterLayout(data.LevelClasses, data.SlopeClasses);
        return new PathLikelihood(data, layout, [], Quadrature.Of(fine)).Evaluate(layout.Vector(parameters, data), cancellation).LogLikelihood;
    }

    /// <summary>What is known of one group at given parameters, as a rule those of a fit; needs no new fit after a new reading.</summary>
    /// <param name="data">The readings.</param>
    /// <param name="parameters">As many means and deviations as the data have classes; no curvature.</param>
    /// <param name="group">The number that <see cref="PathDataBuilder.Group"/> gave; a group of one leg or more.</param>
    /// <exception cref="ArgumentException">The group has no leg, or the parameters are curved.</exception>
    public static GroupPosterior Posterior(PathData data, PathParameters parameters, int group) =>
        Posterior(data, [new PlausibleParameters(1, parameters)], group);

    /// <summary>What is known of one group after a fit, with what the fit itself leaves open.</summary>
    /// <param name="data">The readings, those since the fit included.</param>
    /// <param name="fit">A fit of straight lines with standard errors; without them its estimates are taken as they stand.</param>
    /// <param name="group">The number that <see cref="PathDataBuilder.Group"/> gave; a group of one leg or more.</param>
    /// <exception cref="ArgumentException">The group has no leg, or the fit is curved.</exception>
    public static GroupPosterior Posterior(PathData data, PathFit fit, int group)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return Posterior(data, fit.Plausible, group);
    }

    /// <summary>What is known of one group over parameters with weights, as <see cref="PathFit.Plausible"/> gave them.</summary>
    /// <param name="data">The readings, those since the fit included.</param>
    /// <param name="plausible">At least one, without curvature; the weights sum to 1.</param>
    /// <param name="group">The number that <see cref="PathDataBuilder.Group"/> gave; a group of one leg or more.</param>
    /// <exception cref="ArgumentException">
    /// The group has no leg, there are no parameters, some are curved, or the weights do not sum to 1.
    /// </exception>
    public static GroupPosterior Posterior(PathData data, IReadOnlyList<PlausibleParameters> plausible, int group)
    {
        Check(data, plausible);
        ArgumentOutOfRangeException.ThrowIfNegative(group);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(group, data.Groups);
        return PosteriorBuilder.Of(data, plausible, group);
    }

    /// <summary>What is known of all groups of a cluster at given parameters.</summary>
    /// <param name="data">The readings.</param>
    /// <param name="parameters">As many means and deviations as the data have classes; no curvature.</param>
    /// <param name="cluster">The number that <see cref="PathDataBuilder.Cluster"/> gave; all its groups have legs.</param>
    /// <exception cref="ArgumentException">A group has no leg, or the parameters are curved.</exception>
    public static ClusterPosterior PosteriorOfCluster(PathData data, PathParameters parameters, int cluster) =>
        PosteriorOfCluster(data, [new PlausibleParameters(1, parameters)], cluster);

    /// <summary>What is known of all groups of a cluster after a fit, with what the fit itself leaves open.</summary>
    /// <param name="data">The readings, those since the fit included.</param>
    /// <param name="fit">A fit of straight lines with standard errors; without them its estimates are taken as they stand.</param>
    /// <param name="cluster">The number that <see cref="PathDataBuilder.Cluster"/> gave; all its groups have legs.</param>
    /// <exception cref="ArgumentException">A group has no leg, or the fit is curved.</exception>
    public static ClusterPosterior PosteriorOfCluster(PathData data, PathFit fit, int cluster)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return PosteriorOfCluster(data, fit.Plausible, cluster);
    }

    /// <summary>What is known of all groups of a cluster over parameters with weights.</summary>
    /// <param name="data">The readings, those since the fit included.</param>
    /// <param name="plausible">At least one, without curvature; the weights sum to 1.</param>
    /// <param name="cluster">The number that <see cref="PathDataBuilder.Cluster"/> gave; all its groups have legs.</param>
    /// <exception cref="ArgumentException">
    /// A group has no leg, there are no parameters, some are curved, or the weights do not sum to 1.
    /// </exception>
    public static ClusterPosterior PosteriorOfCluster(PathData data, IReadOnlyList<PlausibleParameters> plausible, int cluster)
    {
        Check(data, plausible);
        ArgumentOutOfRangeException.ThrowIfNegative(cluster);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(cluster, data.Clusters);
        return PosteriorBuilder.OfCluster(data, plausible, cluster);
    }

    private static void Check(PathData data, IReadOnlyList<PlausibleParameters> plausible)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(plausible);
        if (plausible.Any(p => p.Parameters.Curvature.Any(curvature => curvature != 0)))
        {
            throw new ArgumentException("Posteriors are of straight lines.", nameof(plausible));
        }

        if (!(Math.Abs(plausible.Sum(p => p.Weight) - 1) < 1e-9) || plausible.Any(p => p.Weight <= 0))
        {
            throw new ArgumentException("The weights of plausible parameters are above 0 and sum to 1.", nameof(plausible));
        }
    }
}
