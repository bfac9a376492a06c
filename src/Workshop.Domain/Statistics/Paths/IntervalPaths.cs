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
    public static GroupPosterior Posterior(PathData data, PathParameters parameters, int group)
    {
        Check(data, parameters);
        ArgumentOutOfRangeException.ThrowIfNegative(group);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(group, data.Groups);
        return new PosteriorBuilder(data, parameters, fine: false).Group(group);
    }

    /// <summary>What is known of all groups of a cluster at given parameters.</summary>
    /// <param name="data">The readings.</param>
    /// <param name="parameters">As many means and deviations as the data have classes; no curvature.</param>
    /// <param name="cluster">The number that <see cref="PathDataBuilder.Cluster"/> gave; all its groups have legs.</param>
    /// <exception cref="ArgumentException">A group has no leg, or the parameters are curved.</exception>
    public static ClusterPosterior PosteriorOfCluster(PathData data, PathParameters parameters, int cluster)
    {
        Check(data, parameters);
        ArgumentOutOfRangeException.ThrowIfNegative(cluster);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(cluster, data.Clusters);
        return new PosteriorBuilder(data, parameters, fine: false).Cluster(cluster);
    }

    private static void Check(PathData data, PathParameters parameters)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(parameters);
        if (parameters.Curvature.Any(curvature => curvature != 0))
        {
            throw new ArgumentException("Posteriors are of straight lines.", nameof(parameters));
        }
    }
}
