namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// Parameters of the model y = target + level + slope x + curvature x^2 + coefficient z + e. Levels are normal about the mean
/// of their class, slopes about the mean of theirs plus a part that the groups of a cluster share, e about 0.
/// </summary>
public sealed record PathParameters
{
    /// <summary>Mean of each class of levels, less the leg's target; in the unit of the readings.</summary>
    public required IReadOnlyList<double> LevelMean { get; init; }

    /// <summary>Standard deviation of each class of levels, 0 or above.</summary>
    public required IReadOnlyList<double> LevelDeviation { get; init; }

    /// <summary>Mean of each class of slopes, in the unit of the readings per unit of x.</summary>
    public required IReadOnlyList<double> SlopeMean { get; init; }

    /// <summary>Standard deviation of the slopes of a class within one cluster, 0 or above.</summary>
    public required IReadOnlyList<double> SlopeDeviation { get; init; }

    /// <summary>Standard deviation of one reading's error, above 0.</summary>
    public required double Sigma { get; init; }

    /// <summary>Standard deviation of what the slopes of one cluster share, 0 or above.</summary>
    public double ClusterDeviation { get; init; }

    /// <summary>Coefficient of x squared for each class of slopes; empty or 0: straight lines.</summary>
    public IReadOnlyList<double> Curvature { get; init; } = [];

    /// <summary>Coefficient of the readings' covariate, 0 where there is none.</summary>
    public double CovariateCoefficient { get; init; }
}
