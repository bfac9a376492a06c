using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Shims;

/// <summary>What is foretold of one valve at its next adjustment: enough to say which sizes it may ask for.</summary>
/// <param name="Motorcycle">Valves of one motorcycle come together or not at all.</param>
/// <param name="Shim">What lies in it now.</param>
/// <param name="Limits">Of the lobe that decides.</param>
/// <param name="ClearanceMm">The clearance expected then, with the shim of now, mm.</param>
/// <param name="StandardDeviationMm">Of that, mm, above 0.</param>
/// <param name="NeedsShim">The probability that it is opened for and needs a shim, where the motorcycle comes.</param>
/// <param name="Comes">The probability that the motorcycle comes.</param>
/// <param name="DriftMmPer10000Km">How its clearance goes on; absent where that is not known.</param>
/// <param name="Permitted">The shims that the engine takes.</param>
public sealed record ValveOutlook(
    Guid Motorcycle,
    ValveKey Valve,
    ShimThickness Shim,
    ClearanceLimits Limits,
    double ClearanceMm,
    double StandardDeviationMm,
    double NeedsShim,
    double Comes,
    double? DriftMmPer10000Km,
    ShimRange Permitted)
{
    /// <summary>The probability that a clearance spread like this one is outside the limits.</summary>
    public static double Outside(ClearanceLimits limits, double clearanceMm, double standardDeviationMm)
    {
        ArgumentNullException.ThrowIfNull(limits);
        var (below, above) = (((double)limits.Lower.Millimetres - clearanceMm) / standardDeviationMm, ((double)limits.Upper.Millimetres - clearanceMm) / standardDeviationMm);
        return NormalTails.UpperTail(-below) + NormalTails.UpperTail(above);
    }

    /// <summary>
    /// The probability that, once it needs a shim, the thickness it wants lies between two, mm. A valve needs one when it is
    /// outside its limits, so the spread is that of the clearances outside; where those are all but impossible by these
    /// figures and it still needs one, the whole spread.
    /// </summary>
    public double Wants(double thinnestMm, double thickestMm)
    {
        var all = Outside(Limits, ClearanceMm, StandardDeviationMm);
        var (from, to) = (ClearanceAtShim(thinnestMm), ClearanceAtShim(thickestMm));
        if (all < 1e-12)
        {
            return Between(from, to);
        }

        var (lower, upper) = ((double)Limits.Lower.Millimetres, (double)Limits.Upper.Millimetres);
        return (Between(from, Math.Min(to, lower)) + Between(Math.Max(from, upper), to)) / all;
    }

    /// <summary>The clearance for which a shim of this thickness is ideal.</summary>
    private double ClearanceAtShim(double thicknessMm) =>
        (double)Limits.SetTo.Millimetres + ((double)Limits.LeverRatio.Value * (thicknessMm - (double)Shim.Millimetres));

    private double Between(double fromMm, double toMm) => toMm <= fromMm
        ? 0
        : Math.Exp(NormalTails.LogDifference((fromMm - ClearanceMm) / StandardDeviationMm, (toMm - ClearanceMm) / StandardDeviationMm));
}
