namespace Workshop.Domain.Tooling;

/// <summary>
/// What an adapter beside the drive of a torque wrench does: the wrench clicks at a moment about its own drive, while the
/// fastener gets one about a centre that lies further out or further in. With T wanted at the fastener, the wrench's length L
/// (centre of the drive to the mark on the grip) and the adapter's effective length E (centre of the drive to centre of the
/// fastener), T L / (L + E cos angle) is dialled: straight on (0 degrees) less than T, across (90 degrees) T itself, back along
/// the wrench (180 degrees) more. A straight extension bar has E = 0. Lengths may be in any unit, both in the same one.
/// Source: statics; the worked example of US Army TM 1-1500-204-23-9, figure 8-16, stands in the tests.
/// </summary>
public static class WrenchLever
{
    public const decimal LargestAngle = 180;

    // So that 90 degrees is exactly nothing and 60 exactly a half.
    private const int DecimalsOfCosine = 12;

    /// <summary>What is dialled so that the fastener gets <paramref name="torque"/>, in the torque's unit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A length or the angle is outside what makes sense; see <see cref="Turns"/>.</exception>
    public static decimal ToDial(decimal torque, decimal length, decimal effectiveLength, decimal angleDegrees) =>
        torque * length / Reach(length, effectiveLength, angleDegrees);

    /// <summary>What the fastener gets when <paramref name="dialled"/> is set; the inverse of <see cref="ToDial"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">As of <see cref="ToDial"/>.</exception>
    public static decimal AtFastener(decimal dialled, decimal length, decimal effectiveLength, decimal angleDegrees) =>
        dialled * Reach(length, effectiveLength, angleDegrees) / length;

    /// <summary>The hand still turns the fastener: an adapter that reaches back to the grip or beyond has no lever.</summary>
    public static bool Turns(decimal length, decimal effectiveLength, decimal angleDegrees) =>
        length + (effectiveLength * Cosine(angleDegrees)) > 0;

    private static decimal Reach(decimal length, decimal effectiveLength, decimal angleDegrees)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(length);
        ArgumentOutOfRangeException.ThrowIfNegative(effectiveLength);
        ArgumentOutOfRangeException.ThrowIfNegative(angleDegrees);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(angleDegrees, LargestAngle);
        var reach = length + (effectiveLength * Cosine(angleDegrees));
        return reach > 0
            ? reach
            : throw new ArgumentOutOfRangeException(nameof(effectiveLength), effectiveLength, "The adapter reaches back to the grip.");
    }

    private static decimal Cosine(decimal degrees) =>
        decimal.Round((decimal)Math.Cos((double)degrees * Math.PI / 180), DecimalsOfCosine);
}
