using Workshop.Domain.EngineModels;

namespace Workshop.Domain.TorqueSheets;

/// <summary>
/// How often a torque wrench clicks for a tick of the torque sheet: once for each of the alike fasteners at each torque, the
/// stages and the final one. A stage that was done with another wrench is counted on the wrench of the tick all the same, and
/// clicks to check a fastener that is tight are not known; the first counts too many, the second too few.
/// </summary>
public static class WrenchCycles
{
    /// <summary>The cycles of all of a fastener's count; 1 or more.</summary>
    public static int Of(Fastener fastener)
    {
        ArgumentNullException.ThrowIfNull(fastener);
        return fastener.Count * (fastener.Stages.Count + 1);
    }
}
