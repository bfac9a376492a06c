using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Shims;

/// <summary>
/// Standard uncertainties, in mm, of what a plan reckons with, combined as JCGM 100:2008 (GUM), 5.1.2, asks of independent
/// inputs: the root of the sum of squares.
/// </summary>
public static class ShimUncertainty
{
    /// <summary>Of blades about which nothing is noted, the hand that draws them included. Common practice, no source.</summary>
    public const decimal UsualBladeMm = 0.003m;

    /// <summary>
    /// Of a micrometer about which nothing is noted: the error limit of 4 micrometres up to 50 mm in DIN 863-1 and ISO 3611,
    /// taken as rectangular, 4 / root 3 = 2.3 micrometres.
    /// </summary>
    public const decimal UsualMicrometerMm = 0.0023m;

    /// <summary>
    /// Of a clearance taken as the middle of its bracket: a rectangular distribution over the bracket (GUM, 4.3.7: width /
    /// root 12) and the blades' own. A bracket with an open end has no middle; only the blades' is said of it. Two blades
    /// stacked to make an end carry the blades' twice.
    /// </summary>
    public static double OfBracketMm(Bracket bracket, double bladeMm)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(bladeMm);
        var width = bracket is { Go: { } go, NoGo: { } noGo } ? (double)(noGo - go) : 0;
        var blades = bladeMm * bladeMm * (bracket.Stacked ? 2 : 1);
        return Math.Sqrt((width * width / 12) + blades);
    }

    /// <summary>
    /// Of the clearance after a swap: root of (u² + 2 ratio² u_mic²), since old and new shim are both measured. What both
    /// measurements have in common falls out of the difference, so this is on the safe side.
    /// </summary>
    /// <param name="clearanceMm">u of the clearance before.</param>
    /// <param name="ratio">Lever ratio.</param>
    /// <param name="micrometerMm">u of one measurement of a shim.</param>
    public static double AfterSwapMm(double clearanceMm, LeverRatio ratio, double micrometerMm)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(clearanceMm);
        ArgumentOutOfRangeException.ThrowIfNegative(micrometerMm);
        var lever = (double)ratio.Value * micrometerMm;
        return Math.Sqrt((clearanceMm * clearanceMm) + (2 * lever * lever));
    }
}
