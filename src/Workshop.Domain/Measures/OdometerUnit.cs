namespace Workshop.Domain.Measures;

/// <summary>The unit that an odometer counts in; a motorcycle's instrument has one, and readings are typed in it.</summary>
public enum OdometerUnit
{
    Kilometres,
    Miles,
}

/// <summary>What an odometer may show, and what that is as a distance.</summary>
public static class OdometerCount
{
    public const int Smallest = 0;
    public const int Largest = 999_999;

    /// <summary>The distance that a count of whole units stands for; exact in metres.</summary>
    public static Distance ToDistance(this OdometerUnit unit, int count) =>
        unit == OdometerUnit.Miles ? Distance.FromMiles(count) : Distance.FromKilometres(count);

    /// <summary>"km" or "mi".</summary>
    public static string Symbol(this OdometerUnit unit) => unit == OdometerUnit.Miles ? "mi" : "km";

    /// <summary>The distance in the instrument's own unit, whole units, rounded down: shown, never computed with.</summary>
    public static int CountOf(this OdometerUnit unit, Distance distance) =>
        (int)Math.Floor(unit == OdometerUnit.Miles ? distance.Miles : distance.Kilometres);
}
