using System.Text.Json.Serialization;

namespace Workshop.Domain.Measures;

/// <summary>Thickness of a shim in millimetres, as a micrometer reads it; 0.5 to 10 mm in steps of 0.001 mm.</summary>
[JsonConverter(typeof(ShimThicknessJson))]
public readonly record struct ShimThickness : IComparable<ShimThickness>
{
    public const decimal SmallestMm = 0.5m;
    public const decimal LargestMm = 10m;
    public const int DecimalsMm = 3;

    private ShimThickness(decimal millimetres) => Millimetres = millimetres;

    public decimal Millimetres { get; }

    /// <summary>A thickness of so many millimetres, 0.5 to 10 in steps of 0.001.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0.5 to 10 mm, or finer than 0.001 mm.</exception>
    public static ShimThickness FromMillimetres(decimal millimetres) =>
        new(Allowed.Within(millimetres, SmallestMm, LargestMm, DecimalsMm));

    /// <summary>Difference in millimetres; positive when the first is the thicker.</summary>
    public static decimal operator -(ShimThickness left, ShimThickness right) => left.Millimetres - right.Millimetres;

    public static bool operator <(ShimThickness left, ShimThickness right) => left.Millimetres < right.Millimetres;
    public static bool operator >(ShimThickness left, ShimThickness right) => left.Millimetres > right.Millimetres;
    public static bool operator <=(ShimThickness left, ShimThickness right) => left.Millimetres <= right.Millimetres;
    public static bool operator >=(ShimThickness left, ShimThickness right) => left.Millimetres >= right.Millimetres;

    public int CompareTo(ShimThickness other) => Millimetres.CompareTo(other.Millimetres);

    public override string ToString() => $"{Millimetres:0.00#} mm";
}
