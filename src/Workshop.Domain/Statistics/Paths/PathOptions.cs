namespace Workshop.Domain.Statistics.Paths;

/// <summary>What a fit of <see cref="IntervalPaths"/> estimates beside means, deviations and sigma.</summary>
public sealed record PathOptions
{
    /// <summary>Whether the slopes of a cluster share a part whose deviation is estimated; else it is held at 0.</summary>
    public bool SharedSlopes { get; init; }

    /// <summary>Whether every level is at the mean of its class and every slope at the mean of its: no random effects.</summary>
    public bool NoSpread { get; init; }

    /// <summary>Whether all slopes are 0: levels and errors only.</summary>
    public bool NoSlopes { get; init; }

    /// <summary>A class of slopes whose lines may be curved, by one coefficient of x squared; none: all straight.</summary>
    public int? CurvedSlopeClass { get; init; }

    /// <summary>Whether the coefficient of the covariate is estimated; else it is held at <see cref="CovariateCoefficient"/>.</summary>
    public bool EstimateCovariate { get; init; }

    /// <summary>Coefficient of the covariate where it is held, and where the search for it begins.</summary>
    public double CovariateCoefficient { get; init; }

    /// <summary>What is known of parameters from elsewhere; the fit is then the mode of the posterior density.</summary>
    public IReadOnlyList<PathPrior> Priors { get; init; } = [];

    /// <summary>Where to begin; none: from the middles of the brackets.</summary>
    public PathParameters? Start { get; init; }

    /// <summary>Whether standard errors are wanted; they take about as long as the search.</summary>
    public bool StandardErrors { get; init; } = true;

    /// <summary>Whether to integrate to about 13 digits, at three times the cost; else to about 8.</summary>
    public bool Fine { get; init; }

    /// <summary>Twice the log-likelihood still to be gained, by the search's own estimate, at which it ends.</summary>
    public double Precision { get; init; } = 1e-6;
}

/// <summary>A normal prior density of a parameter.</summary>
/// <param name="On">Which parameter.</param>
/// <param name="Class">Its class of levels or slopes; 0 where there is only one of its kind.</param>
/// <param name="Centre">Mean of the prior.</param>
/// <param name="Deviation">Standard deviation of the prior, above 0.</param>
public sealed record PathPrior(PriorOn On, int Class, double Centre, double Deviation);

/// <summary>Which parameter a prior is on, and whether on its logarithm.</summary>
public enum PriorOn
{
    /// <summary>Mean of a class of levels.</summary>
    LevelMean,

    /// <summary>Natural logarithm of a class's standard deviation of levels.</summary>
    LogLevelDeviation,

    /// <summary>Mean of a class of slopes.</summary>
    SlopeMean,

    /// <summary>Natural logarithm of a class's standard deviation of slopes.</summary>
    LogSlopeDeviation,

    /// <summary>Natural logarithm of sigma.</summary>
    LogSigma,

    /// <summary>Natural logarithm of the standard deviation of the clusters' common part.</summary>
    LogClusterDeviation,
}
