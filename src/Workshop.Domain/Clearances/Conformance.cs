using Workshop.Domain.Statistics;

namespace Workshop.Domain.Clearances;

/// <summary>How far inside the limits a clearance must be before it counts as proven, by ISO 14253-1.</summary>
public enum GuardBand
{
    /// <summary>The limits themselves: what is within is within.</summary>
    Off,

    /// <summary>1.65 u: conformity is proven with 95 % at a limit on one side (ISO 14253-1:2017).</summary>
    At95Percent,

    /// <summary>U = 2 u, the expanded uncertainty (ISO 14253-1:1998 and 2013).</summary>
    ExpandedUncertainty,
}

/// <summary>What a value with its uncertainty proves against two limits.</summary>
public enum Conformity
{
    /// <summary>Inside both limits by the guard band: conformity is proven.</summary>
    Proven,

    /// <summary>Within a guard band's width of a limit, on either side of it: near the limit, neither is proven.</summary>
    NearLimit,

    /// <summary>Beyond a limit by the guard band: non-conformity is proven.</summary>
    Disproven,
}

/// <summary>
/// Decision rules of ISO 14253-1 and conformance probability of JCGM 106:2012 for a value with a standard uncertainty,
/// taken as normally distributed, between a lower and an upper limit. All in one unit.
/// </summary>
public static class Conformance
{
    /// <summary>The width of the guard band: 0, 1.65 u or 2 u.</summary>
    /// <param name="band">Which rule.</param>
    /// <param name="standardUncertainty">u, 0 or above.</param>
    public static double Width(GuardBand band, double standardUncertainty)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(standardUncertainty);
        return band switch
        {
            GuardBand.Off => 0,
            GuardBand.At95Percent => 1.65 * standardUncertainty,
            GuardBand.ExpandedUncertainty => 2 * standardUncertainty,
            _ => throw new ArgumentOutOfRangeException(nameof(band), band, null),
        };
    }

    /// <summary>
    /// ISO 14253-1: proven where lower + g &lt;= value &lt;= upper - g; disproven where value &lt; lower - g or value &gt; upper + g;
    /// between, neither.
    /// </summary>
    /// <param name="value">What was measured or is predicted.</param>
    /// <param name="lower">Smallest allowed; belongs to the range.</param>
    /// <param name="upper">Largest allowed; belongs to the range.</param>
    /// <param name="guard">g, 0 or above.</param>
    public static Conformity Of(double value, double lower, double upper, double guard)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(guard);
        return value >= lower + guard && value <= upper - guard ? Conformity.Proven
            : value < lower - guard || value > upper + guard ? Conformity.Disproven
            : Conformity.NearLimit;
    }

    /// <summary>
    /// JCGM 106:2012, 7.3: Phi((upper - value) / u) - Phi((lower - value) / u), the probability that the true value lies inside
    /// the limits; with u = 0, whether the value does.
    /// </summary>
    /// <param name="value">What was measured or is predicted.</param>
    /// <param name="standardUncertainty">u, 0 or above.</param>
    /// <param name="lower">Smallest allowed; minus infinity where there is none.</param>
    /// <param name="upper">Largest allowed; infinity where there is none.</param>
    public static double Probability(double value, double standardUncertainty, double lower, double upper)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(standardUncertainty);
        if (standardUncertainty == 0)
        {
            return value >= lower && value <= upper ? 1 : 0;
        }

        var below = NormalTails.UpperTail((value - lower) / standardUncertainty);
        var above = NormalTails.UpperTail((upper - value) / standardUncertainty);
        return Math.Max(0, 1 - below - above);
    }
}
