namespace Workshop.Domain.Statistics;

/// <summary>One cause of uncertainty.</summary>
/// <param name="Name">What it is.</param>
/// <param name="StandardUncertainty">Times its sensitivity: in the unit of the result, 0 or above.</param>
/// <param name="DegreesOfFreedom">Behind it, above 0; infinity where it is known for certain how wide it is.</param>
public sealed record UncertaintyContribution(string Name, double StandardUncertainty, double DegreesOfFreedom = double.PositiveInfinity);

/// <summary>
/// The uncertainty of a result from independent causes, by the law of propagation of uncertainty and the formula of Welch and
/// Satterthwaite.
/// </summary>
/// <remarks>JCGM 100:2008 (GUM), 5.1.2, G.4.1 and G.6.4.</remarks>
public sealed record UncertaintyBudget
{
    private UncertaintyBudget(IReadOnlyList<UncertaintyContribution> contributions, double combined, double degrees) =>
        (Contributions, Combined, EffectiveDegreesOfFreedom) = (contributions, combined, degrees);

    /// <summary>The causes as they were given.</summary>
    public IReadOnlyList<UncertaintyContribution> Contributions { get; }

    /// <summary>The combined standard uncertainty, in the unit of the contributions.</summary>
    public double Combined { get; }

    /// <summary>Of the combined uncertainty; infinity where every cause is known for certain.</summary>
    public double EffectiveDegreesOfFreedom { get; }

    /// <summary>Adds up causes that know nothing of each other.</summary>
    /// <exception cref="ArgumentException">There are none, or one is negative, not finite or without degrees of freedom.</exception>
    public static UncertaintyBudget Of(IReadOnlyList<UncertaintyContribution> contributions)
    {
        ArgumentNullException.ThrowIfNull(contributions);
        if (contributions.Count == 0)
        {
            throw new ArgumentException("A budget has one contribution at least.", nameof(contributions));
        }

        foreach (var contribution in contributions)
        {
            Guard.Finite(contribution.StandardUncertainty, nameof(contributions));
            if (contribution.StandardUncertainty < 0 || !(contribution.DegreesOfFreedom > 0))
            {
                throw new ArgumentException(
                    $"{contribution.Name}: an uncertainty of 0 or above with degrees of freedom above 0 is allowed.", nameof(contributions));
            }
        }

        var combined = Math.Sqrt(contributions.Sum(c => c.StandardUncertainty * c.StandardUncertainty));
        var spread = contributions.Sum(c => Math.Pow(c.StandardUncertainty, 4) / c.DegreesOfFreedom);
        return new UncertaintyBudget(contributions, combined, spread > 0 ? Math.Pow(combined, 4) / spread : double.PositiveInfinity);
    }

    /// <summary>
    /// What the combined uncertainty is multiplied with to hold the truth at a confidence: Student's t for the effective degrees of
    /// freedom, cut down to a whole number as the GUM has it.
    /// </summary>
    /// <param name="confidence">Between 0 and 1.</param>
    public double CoverageFactor(double confidence)
    {
        Guard.Confidence(confidence);

        // With a million degrees of freedom Student's t is the normal law to six digits.
        return StudentT.TwoSidedQuantile(confidence, Math.Max(1, Math.Min(Math.Floor(EffectiveDegreesOfFreedom), 1e6)));
    }

    /// <summary>The expanded uncertainty U = k u at a confidence, in the unit of the contributions.</summary>
    public double Expanded(double confidence) => CoverageFactor(confidence) * Combined;
}
