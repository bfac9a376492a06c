using System.Text.Json.Serialization;

namespace Workshop.Domain.Measures;

/// <summary>
/// Tightening torque in newton metres, above 0 and up to 1000 N.m. Pound-force feet and inches are exact by definition
/// of the pound-force (0.45359237 kg x 9.80665 m/s2, NIST SP 811) and the inch (0.0254 m).
/// </summary>
[JsonConverter(typeof(TorqueJson))]
public readonly record struct Torque : IComparable<Torque>
{
    public const decimal SmallestNm = 0.1m;
    public const decimal LargestNm = 1000m;
    public const int DecimalsNm = 2;

    /// <summary>N.m in one pound-force foot: 0.45359237 x 9.80665 x 0.3048.</summary>
    public const decimal NewtonMetresPerPoundFoot = 1.3558179483314004m;

    /// <summary>N.m in one pound-force inch: 0.45359237 x 9.80665 x 0.0254.</summary>
    public const decimal NewtonMetresPerPoundInch = 0.1129848290276167m;

    /// <summary>N.m in one kilogram-force metre: the standard acceleration of free fall, exact by definition (NIST SP 811).</summary>
    public const decimal NewtonMetresPerKilogramForceMetre = 9.80665m;

    private Torque(decimal newtonMetres) => NewtonMetres = newtonMetres;

    public decimal NewtonMetres { get; }

    public decimal PoundFeet => NewtonMetres / NewtonMetresPerPoundFoot;

    public decimal PoundInches => NewtonMetres / NewtonMetresPerPoundInch;

    /// <summary>A torque of so many newton metres, 0.1 to 1000 in steps of 0.01.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0.1 to 1000 N.m, or finer than 0.01 N.m.</exception>
    public static Torque FromNewtonMetres(decimal newtonMetres) =>
        new(Allowed.Within(newtonMetres, SmallestNm, LargestNm, DecimalsNm));

    public int CompareTo(Torque other) => NewtonMetres.CompareTo(other.NewtonMetres);

    public static bool operator <(Torque left, Torque right) => left.NewtonMetres < right.NewtonMetres;
    public static bool operator >(Torque left, Torque right) => left.NewtonMetres > right.NewtonMetres;
    public static bool operator <=(Torque left, Torque right) => left.NewtonMetres <= right.NewtonMetres;
    public static bool operator >=(Torque left, Torque right) => left.NewtonMetres >= right.NewtonMetres;

    public override string ToString() => $"{NewtonMetres:0.##} N.m";
}
