namespace Workshop.Domain.Threads;

/// <summary>
/// How a tightening torque and the force in the bolt belong together, by VDI 2230 part 1: a bolt with a hexagon head, its friction
/// alike in the thread and under the head.
/// </summary>
public static class Tightening
{
    /// <summary>Share of the yield strength that VDI 2230 uses when a bolt is tightened with a torque wrench.</summary>
    public const double ShareOfYield = 0.9;

    // Thinnest bearing face of a hexagon head (ISO 4014, product grade B) and through hole (ISO 273, medium). Those of M6 to M12
    // are in the published worked rows that the tests compare with, the others from memory.
    private static readonly Dictionary<double, (double BearingMm, double HoleMm)> Heads = new()
    {
        [4] = (5.74, 4.5), [5] = (6.74, 5.5), [6] = (8.74, 6.6), [8] = (11.47, 9), [10] = (14.47, 11), [12] = (16.47, 13.5),
        [14] = (19.15, 15.5), [16] = (22, 17.5),
    };

    /// <summary>Whether the head that goes with this diameter is known here.</summary>
    public static bool Knows(MetricThread thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return Heads.ContainsKey(thread.DiameterMm);
    }

    /// <summary>
    /// Torque in N.m that gives a force: MA = F [0.16 P + 0.58 d2 mu + mu DKm / 2], DKm the mean of bearing face and hole.
    /// </summary>
    /// <param name="forceN">In the bolt.</param>
    /// <param name="friction">Coefficient, in the thread and under the head, 0.04 to 0.4.</param>
    /// <exception cref="KeyNotFoundException">The diameter's head is not known; ask <see cref="Knows"/>.</exception>
    public static double TorqueNm(MetricThread thread, double forceN, double friction) => forceN * ArmMm(thread, friction) / 1000;

    /// <summary>The force in N that a torque in N.m gives; the way back from <see cref="TorqueNm"/>.</summary>
    public static double ForceN(MetricThread thread, double torqueNm, double friction) => torqueNm * 1000 / ArmMm(thread, friction);

    /// <summary>
    /// Assembly force in N at 90 % of the yield strength under tension and torsion:
    /// FM = 0.9 Rp A0 / sqrt(1 + 3 [1.5 (d2/d0) (P/(pi d2) + 1.155 mu)]^2), A0 the area of d0 = (d2 + d3)/2.
    /// </summary>
    public static double AssemblyForceN(MetricThread thread, PropertyClass steel, double friction)
    {
        ArgumentNullException.ThrowIfNull(thread);
        ArgumentNullException.ThrowIfNull(steel);
        var (d2, d0) = (thread.PitchDiameterMm, thread.MeanDiameterMm);
        var torsion = 1.5 * (d2 / d0) * ((thread.PitchMm / (Math.PI * d2)) + (1.155 * friction));
        return ShareOfYield * steel.YieldMpa * (Math.PI / 4 * d0 * d0) / Math.Sqrt(1 + (3 * torsion * torsion));
    }

    private static double ArmMm(MetricThread thread, double friction)
    {
        ArgumentNullException.ThrowIfNull(thread);
        ArgumentOutOfRangeException.ThrowIfLessThan(friction, 0.04);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(friction, 0.4);
        var (bearing, hole) = Heads[thread.DiameterMm];
        return (0.16 * thread.PitchMm) + (0.58 * thread.PitchDiameterMm * friction) + ((bearing + hole) / 4 * friction);
    }
}
