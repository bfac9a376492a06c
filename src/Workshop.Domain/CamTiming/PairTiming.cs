using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>
/// Intake and exhaust of one cylinder bank together, by the arithmetic that every card of a camshaft is printed with. Angles
/// count from the dead centres as in <see cref="CamEvents"/>.
/// </summary>
/// <param name="IntakeCentre">After top dead centre.</param>
/// <param name="ExhaustCentre">Before top dead centre.</param>
public sealed record PairTiming(CrankAngle IntakeCentre, CrankAngle ExhaustCentre)
{
    /// <summary>
    /// From the exhaust's lobe centre to the intake's, as the camshaft sees it: their sum in crank degrees, half of it in cam
    /// degrees.
    /// </summary>
    public CamAngle Separation => (IntakeCentre + ExhaustCentre).ToCam();

    /// <summary>
    /// How far both together are ahead of standing evenly about top dead centre: (exhaust centre - intake centre) / 2; negative
    /// where they are behind.
    /// </summary>
    public CrankAngle Advance => (ExhaustCentre - IntakeCentre) / 2;

    /// <summary>
    /// How long both are open at once about top dead centre, from their durations at one lift: half of both durations less twice
    /// the separation; negative where neither is open there.
    /// </summary>
    /// <param name="intake">Duration of the intake.</param>
    /// <param name="exhaust">Duration of the exhaust at the same lift.</param>
    public CrankAngle Overlap(CrankAngle intake, CrankAngle exhaust) =>
        ((intake + exhaust) / 2) - Separation.ToCrank();

    /// <summary>The pair whose events are known.</summary>
    public static PairTiming Of(CamEvents intake, CamEvents exhaust) =>
        new(intake.LobeCentre(Side.Intake), exhaust.LobeCentre(Side.Exhaust));

    /// <summary>The overlap of events at one lift: intake opening + exhaust closing.</summary>
    public static CrankAngle OverlapOf(CamEvents intake, CamEvents exhaust) => intake.Opens + exhaust.Closes;
}
