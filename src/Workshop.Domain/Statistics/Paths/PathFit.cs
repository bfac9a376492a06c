namespace Workshop.Domain.Statistics.Paths;

/// <summary>A fit of <see cref="IntervalPaths"/> by maximum marginal likelihood.</summary>
public sealed record PathFit
{
    /// <summary>The estimates.</summary>
    public required PathParameters Parameters { get; init; }

    /// <summary>
    /// Their standard errors in the same places, from the observed information; 0 where a parameter was held or is not told (a
    /// remark says so). A deviation estimated as 0 stands at its bound and has none: 0 as well. A reason instead where none were
    /// asked for.
    /// </summary>
    public required Computed<PathParameters> StandardErrors { get; init; }

    /// <summary>
    /// Parameters that stand for all that the readings leave possible: the estimates alone where they are well told; else others
    /// to either side along the one to three combinations that are told worst, weighted so that means, variances and fourth
    /// moments along them are those of the normal approximation (Gauss and Hermite's rule of three points for each, whose
    /// middles are the estimates; with three combinations nothing is left for the middle).
    /// </summary>
    public required IReadOnlyList<PlausibleParameters> Plausible { get; init; }

    /// <summary>The log-likelihood at the estimates, without the priors.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>How many readings entered.</summary>
    public required int Readings { get; init; }

    /// <summary>How many groups.</summary>
    public required int Groups { get; init; }

    /// <summary>How many evaluations of the likelihood the search took, those for standard errors apart.</summary>
    public required int Evaluations { get; init; }

    /// <summary>What is worth knowing about the estimates.</summary>
    public required IReadOnlyList<PathRemark> Remarks { get; init; }
}

/// <summary>Parameters with a weight.</summary>
/// <param name="Weight">Above 0; the weights of a list sum to 1.</param>
/// <param name="Parameters">The parameters.</param>
public sealed record PlausibleParameters(double Weight, PathParameters Parameters);

/// <summary>What is worth knowing about a fit.</summary>
public enum PathRemark
{
    /// <summary>The levels of a class show no spread beyond the errors: its deviation is 0.</summary>
    NoLevelSpread,

    /// <summary>The slopes of a class show no spread beyond the errors: its deviation is 0.</summary>
    NoSlopeSpread,

    /// <summary>The slopes of a cluster have nothing in common: that deviation is 0.</summary>
    NothingShared,

    /// <summary>There are not two clusters of two groups, so that nothing can be told of what they share.</summary>
    SharingNotTold,

    /// <summary>Sigma cannot be told from the spread of levels, as with one reading a leg; standard errors hold it.</summary>
    SigmaNotTold,

    /// <summary>
    /// The mean of some class of levels, or a deviation, is not told, as where all readings of a class lie in one bracket; it
    /// has no standard error.
    /// </summary>
    SpreadNotTold,

    /// <summary>The fit leans on priors.</summary>
    Borrowed,
}
