using System.Text.Json.Serialization;

namespace Workshop.Domain.Measures;

/// <summary>
/// Gap between cam (or follower) and valve gear at the place where the blade goes, in millimetres; 0 to 3 mm with up
/// to four decimals, which carries blades in thousandths of an inch (0.001 in = 0.0254 mm) exactly.
/// </summary>
[JsonConverter(typeof(ClearanceJson))]
public readonly record struct Clearance : IComparable<Clearance>
{
    public const decimal SmallestMm = 0m;
    public const decimal LargestMm = 3m;
    public const int DecimalsMm = 4;

    /// <summary>By definition of the inch, 0.0254 m (NIST SP 811).</summary>
    public const decimal MillimetresPerInch = 25.4m;

    private Clearance(decimal millimetres) => Millimetres = millimetres;

    public decimal Millimetres { get; }

    public decimal Inches => Millimetres / MillimetresPerInch;

    /// <summary>A clearance of so many millimetres, 0 to 3 with up to four decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 3 mm, or more than four decimals.</exception>
    public static Clearance FromMillimetres(decimal millimetres) =>
        new(Allowed.Within(millimetres, SmallestMm, LargestMm, DecimalsMm));

    /// <summary>What an inch blade is marked with, 0.0001 in being 0.00254 mm, to the nearest 0.0001 mm.</summary>
    public static Clearance FromInches(decimal inches) => FromMillimetres(decimal.Round(inches * MillimetresPerInch, DecimalsMm));

    /// <summary>Difference of two clearances in millimetres; negative when the first is the smaller.</summary>
    public static decimal operator -(Clearance left, Clearance right) => left.Millimetres - right.Millimetres;

    public static bool operator <(Clearance left, Clearance right) => left.Millimetres < right.Millimetres;
    public static bool operator >(Clearance left, Clearance right) => left.Millimetres > right.Millimetres;
    public static bool operator <=(Clearance left, Clearance right) => left.Millimetres <= right.Millimetres;
    public static bool operator >=(Clearance left, Clearance right) => left.Millimetres >= right.Millimetres;

    public int CompareTo(Clearance other) => Millimetres.CompareTo(other.Millimetres);

    public override string ToString() => $"{Millimetres:0.00##} mm";
}
