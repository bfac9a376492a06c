using System.Text.Json.Serialization;

namespace Workshop.Domain.Measures;

/// <summary>
/// A pressure, or how far below the air's a vacuum is, in kilopascals, 0 to 10,000 to 0.01. The millimetre of mercury is the
/// conventional one, 133.3224 Pa; a bar is 100 kPa exactly; a pound-force per square inch is exact by definition of the pound-force
/// (0.45359237 kg x 9.80665 m/s2) and the inch (0.0254 m), 6.894757 kPa (NIST SP 811, appendix B.8).
/// </summary>
[JsonConverter(typeof(PressureJson))]
public readonly record struct Pressure : IComparable<Pressure>
{
    public const decimal SmallestKpa = 0m;
    public const decimal LargestKpa = 10_000m;
    public const int DecimalsKpa = 2;

    /// <summary>kPa in one conventional millimetre of mercury: 13.5951 g/cm3 x 9.80665 m/s2 x 1 mm.</summary>
    public const decimal KilopascalsPerMillimetreOfMercury = 0.133322387415m;

    /// <summary>kPa in one bar, exact.</summary>
    public const decimal KilopascalsPerBar = 100m;

    /// <summary>kPa in one pound-force per square inch: 0.45359237 x 9.80665 / 0.0254^2 / 1000, to 16 digits.</summary>
    public const decimal KilopascalsPerPsi = 6.894757293168361m;

    private Pressure(decimal kilopascals) => Kilopascals = kilopascals;

    public decimal Kilopascals { get; }

    public decimal MillimetresOfMercury => Kilopascals / KilopascalsPerMillimetreOfMercury;

    public decimal Bar => Kilopascals / KilopascalsPerBar;

    public decimal Psi => Kilopascals / KilopascalsPerPsi;

    /// <summary>A pressure of so many kilopascals, 0 to 10,000 in steps of 0.01.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 10,000 kPa, or finer than 0.01 kPa.</exception>
    public static Pressure FromKilopascals(decimal kilopascals) =>
        new(Allowed.Within(kilopascals, SmallestKpa, LargestKpa, DecimalsKpa));

    public int CompareTo(Pressure other) => Kilopascals.CompareTo(other.Kilopascals);

    public static bool operator <(Pressure left, Pressure right) => left.Kilopascals < right.Kilopascals;
    public static bool operator >(Pressure left, Pressure right) => left.Kilopascals > right.Kilopascals;
    public static bool operator <=(Pressure left, Pressure right) => left.Kilopascals <= right.Kilopascals;
    public static bool operator >=(Pressure left, Pressure right) => left.Kilopascals >= right.Kilopascals;

    public override string ToString() => $"{Kilopascals:0.##} kPa";
}
