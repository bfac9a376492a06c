namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// The readings of one leg in units of their own standard deviation, at given parameters and slope, for a level in the middle
/// of its class. An exact reading has its value in <see cref="Lower"/>.
/// </summary>
internal readonly ref struct StandardisedLeg
{
    public required ReadOnlySpan<double> Lower { get; init; }

    public required ReadOnlySpan<double> Upper { get; init; }

    public required ReadOnlySpan<bool> Exact { get; init; }

    /// <summary>Standard deviation of the level's class over that of the reading.</summary>
    public required ReadOnlySpan<double> PerLevel { get; init; }

    public required ReadOnlySpan<double> InverseScale { get; init; }

    public required ReadOnlySpan<double> X { get; init; }

    public required ReadOnlySpan<double> Covariate { get; init; }

    /// <summary>Share of sigma squared in the reading's variance, 1 unless a known variance is added.</summary>
    public required ReadOnlySpan<double> ScaleShare { get; init; }

    /// <summary>Whether the scores by curvature and covariate are wanted.</summary>
    public required bool Extras { get; init; }

    /// <summary>Whether the second derivative by the level is wanted.</summary>
    public bool SecondDerivative { get; init; }
}

/// <summary>
/// One reading on a log scale: log probability (log density where exact, up to its standard deviation), score by its mean and
/// by the logarithm of its standard deviation, both times that deviation.
/// </summary>
internal readonly record struct ReadingScore(double LogProbability, double Score, double Scale)
{
    public static ReadingScore At(double lower, double upper, bool exact)
    {
        if (exact)
        {
            return new(NormalTails.LogDensity(lower), lower, (lower * lower) - 1);
        }

        var log = NormalTails.LogDifference(lower, upper);
        var atLower = Math.Exp(NormalTails.LogDensity(lower) - log);
        var atUpper = Math.Exp(NormalTails.LogDensity(upper) - log);
        return new(log, atLower - atUpper, (lower * atLower) - (upper * atUpper));
    }
}
