using System.Globalization;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>How top dead centre was found.</summary>
public enum DeadCentreMethod
{
    /// <summary>The piston ran up to a stop from both sides; dead centre is in the middle.</summary>
    PositiveStop,

    /// <summary>A dial gauge on the piston, read at one height to both sides.</summary>
    DialGauge,

    /// <summary>By the engine's own marks, which may be off themselves.</summary>
    Marks,
}

/// <summary>
/// Where the degree wheel's zero stands. Stop or dial gauge are read to both sides of top dead centre; half the difference of
/// the two readings is what the wheel is off.
/// </summary>
/// <param name="Method">How it was found.</param>
/// <param name="Before">The wheel's reading on the near side, before top dead centre; absent with marks.</param>
/// <param name="After">The wheel's reading on the far side, after top dead centre; absent with marks.</param>
public sealed record DeadCentre(DeadCentreMethod Method, CrankAngle? Before, CrankAngle? After)
{
    /// <summary>What the wheel shows at true top dead centre, after its zero; 0 where only marks were used.</summary>
    public CrankAngle WheelAtDeadCentre => Before is { } before && After is { } after ? (after - before) / 2 : CrankAngle.Zero;

    /// <summary>Events as the wheel showed them, told from true dead centre.</summary>
    public CamEvents Corrected(CamEvents shown) => shown.Advanced(WheelAtDeadCentre);

    /// <summary>In a sentence.</summary>
    public string Sentence => Method switch
    {
        DeadCentreMethod.Marks => "Dead centre by marks only: they may be off themselves; take it by a positive stop to both sides before anything is moved.",
        _ when WheelAtDeadCentre == CrankAngle.Zero => string.Create(CultureInfo.InvariantCulture,
            $"Dead centre by {Method.Spoken()}, {Before} to either side: the wheel stands right."),
        _ => string.Create(CultureInfo.InvariantCulture,
            $"Dead centre by {Method.Spoken()}, {Before} before and {After} after: the wheel shows {WheelAtDeadCentre.Abs()} {(WheelAtDeadCentre > CrankAngle.Zero ? "after" : "before")} at dead centre, and every reading is corrected by it."),
    };
}
