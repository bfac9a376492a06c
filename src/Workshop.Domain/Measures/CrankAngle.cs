using System.Text.Json.Serialization;

namespace Workshop.Domain.Measures;

/// <summary>
/// An angle that the crankshaft turns through, in crank degrees. May be negative: an event on the other side of its dead
/// centre, or what is late. Two crank degrees are one cam degree, as the camshaft of a four-stroke engine turns once while
/// the crankshaft turns twice.
/// </summary>
[JsonConverter(typeof(CrankAngleJson))]
public readonly record struct CrankAngle : IComparable<CrankAngle>
{
    /// <summary>The smallest angle that is typed or stated, from a dead centre.</summary>
    public const decimal SmallestDegrees = -180m;

    /// <summary>The largest angle that is typed or stated, from a dead centre.</summary>
    public const decimal LargestDegrees = 180m;

    /// <summary>Decimals of what is typed or stated; what is computed may have more.</summary>
    public const int DecimalsDegrees = 2;

    public const decimal CrankPerCam = 2m;

    private CrankAngle(decimal degrees) => Degrees = degrees;

    public decimal Degrees { get; }

    public static CrankAngle Zero => default;

    /// <summary>The same time as an angle of the camshaft.</summary>
    public CamAngle ToCam() => CamAngle.FromDegrees(Degrees / CrankPerCam);

    public CrankAngle Abs() => new(Math.Abs(Degrees));

    /// <summary>An angle of so many crank degrees.</summary>
    public static CrankAngle FromDegrees(decimal degrees) => new(degrees);

    public static CrankAngle operator +(CrankAngle left, CrankAngle right) => new(left.Degrees + right.Degrees);
    public static CrankAngle operator -(CrankAngle left, CrankAngle right) => new(left.Degrees - right.Degrees);
    public static CrankAngle operator -(CrankAngle angle) => new(-angle.Degrees);
    public static CrankAngle operator *(CrankAngle angle, decimal times) => new(angle.Degrees * times);
    public static CrankAngle operator /(CrankAngle angle, decimal by) => new(angle.Degrees / by);

    public static bool operator <(CrankAngle left, CrankAngle right) => left.Degrees < right.Degrees;
    public static bool operator >(CrankAngle left, CrankAngle right) => left.Degrees > right.Degrees;
    public static bool operator <=(CrankAngle left, CrankAngle right) => left.Degrees <= right.Degrees;
    public static bool operator >=(CrankAngle left, CrankAngle right) => left.Degrees >= right.Degrees;

    public int CompareTo(CrankAngle other) => Degrees.CompareTo(other.Degrees);

    public override string ToString() => $"{Degrees:0.##}°";
}
