using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>
/// When the valves of one side open and close at one lift, in crank degrees from the dead centre that is named for it: intake
/// opens before top and closes after bottom, exhaust opens before bottom and closes after top. An event on the other side of
/// its dead centre is negative.
/// </summary>
/// <param name="Opens">Before its dead centre.</param>
/// <param name="Closes">After its dead centre.</param>
public readonly record struct CamEvents(CrankAngle Opens, CrankAngle Closes)
{
    /// <summary>Half a turn of the crankshaft, from one dead centre to the other.</summary>
    public static readonly CrankAngle HalfTurn = CrankAngle.FromDegrees(180);

    /// <summary>How long the valves are beyond that lift: opening + 180 + closing, in crank degrees.</summary>
    public CrankAngle Duration => Opens + HalfTurn + Closes;

    /// <summary>
    /// The middle between opening and closing: of the intake after top dead centre, duration / 2 - opening; of the exhaust before
    /// it, duration / 2 - closing.
    /// </summary>
    public CrankAngle LobeCentre(Side side) => (Duration / 2) - (side == Side.Intake ? Opens : Closes);

    /// <summary>The same lobe, turned forward: what opens opens earlier by as much as what closes closes earlier.</summary>
    /// <param name="advance">How much earlier; negative where later.</param>
    public CamEvents Advanced(CrankAngle advance) => new(Opens + advance, Closes - advance);

    /// <summary>The events of a lobe of which centre and duration are known.</summary>
    /// <param name="side">Says from which side of top dead centre the centre counts.</param>
    /// <param name="centre">Intake after, exhaust before top dead centre.</param>
    /// <param name="duration">At the lift of the events.</param>
    public static CamEvents About(Side side, CrankAngle centre, CrankAngle duration)
    {
        var near = (duration / 2) - centre;
        var far = (duration / 2) + centre - HalfTurn;
        return side == Side.Intake ? new CamEvents(near, far) : new CamEvents(far, near);
    }

    /// <summary>What is stated of a lobe; nothing where only its centre is.</summary>
    public static CamEvents? Of(LobeTiming lobe)
    {
        ArgumentNullException.ThrowIfNull(lobe);
        return lobe is { Opens: { } opens, Closes: { } closes } ? new CamEvents(opens, closes) : null;
    }
}
