namespace Workshop.Domain.Measures;

/// <summary>An angle that the camshaft turns through, in cam degrees; one is two crank degrees.</summary>
public readonly record struct CamAngle : IComparable<CamAngle>
{
    private CamAngle(decimal degrees) => Degrees = degrees;

    public decimal Degrees { get; }

    /// <summary>The same time as an angle of the crankshaft.</summary>
    public CrankAngle ToCrank() => CrankAngle.FromDegrees(Degrees * CrankAngle.CrankPerCam);

    /// <summary>An angle of so many cam degrees.</summary>
    public static CamAngle FromDegrees(decimal degrees) => new(degrees);

    public static bool operator <(CamAngle left, CamAngle right) => left.Degrees < right.Degrees;
    public static bool operator >(CamAngle left, CamAngle right) => left.Degrees > right.Degrees;
    public static bool operator <=(CamAngle left, CamAngle right) => left.Degrees <= right.Degrees;
    public static bool operator >=(CamAngle left, CamAngle right) => left.Degrees >= right.Degrees;

    public int CompareTo(CamAngle other) => Degrees.CompareTo(other.Degrees);

    public override string ToString() => $"{Degrees:0.##}°";
}
