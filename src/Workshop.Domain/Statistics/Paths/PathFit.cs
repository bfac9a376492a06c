namespace Workshop.Domain.Statistics.Paths;

/// <summary>A fit of <see cref="IntervalPaths"/> by maximum marginal likelihood.</summary>
public sealed record PathFit
{
    /// <summary>The estimates.</summary>
    public required PathParameters Parameters { get; init; }

    /// <summary>
    /// Their standard errors in the same places, from the observed information; 0 where a parameter was held. A deviation
    /// estimated as 0 stands at its bound and has none: 0 as well. A reason instead where the information is not positive
    /// definite, or none were asked for.
    /// </summary>
    public required Computed<PathParameters> StandardErrors { get; init; }

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

    /// <summary>The fit leans on priors.</summary>
    Borrowed,
}
