using Workshop.Domain.Measures;

namespace Workshop.Domain.Shims;

/// <summary>
/// What a shim does to a clearance: each millimetre of added shim takes away the lever ratio's worth of it, at the place where
/// the blade goes. So +0.10 mm of shim at ratio 0.6 lowers the clearance by 0.06 mm. It follows from the definition of the
/// lever ratio (<see cref="LeverRatio"/>): similar triangles about the follower's pivot, 1 where there is no lever.
/// </summary>
public static class ShimArithmetic
{
    /// <summary>
    /// The clearance after a change of shim, mm: found + ratio x (old - new). Below zero where the valve would be held open.
    /// </summary>
    public static decimal PredictedMm(decimal foundMm, LeverRatio ratio, ShimThickness old, decimal newMm) =>
        foundMm + (ratio.Value * (old.Millimetres - newMm));

    /// <summary>
    /// The thickness that gives exactly the clearance aimed at, mm: old + (found - aim) / ratio; not rounded, and not yet
    /// held to what is permitted or to be had.
    /// </summary>
    public static decimal IdealMm(decimal foundMm, LeverRatio ratio, ShimThickness old, decimal aimMm) =>
        old.Millimetres + ((foundMm - aimMm) / ratio.Value);
}
