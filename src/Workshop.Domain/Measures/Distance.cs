using System.Text.Json.Serialization;

namespace Workshop.Domain.Measures;

/// <summary>
/// A distance ridden, held in metres to the millimetre, so that whole kilometres and whole miles are both exact
/// (one mile is 1609.344 m; international yard and pound agreement of 1959, NIST SP 811 appendix B). May be negative
/// where it is what is left until a due point.
/// </summary>
[JsonConverter(typeof(DistanceJson))]
public readonly record struct Distance : IComparable<Distance>
{
    public const decimal MetresPerMile = 1609.344m;
    public const decimal MetresPerKilometre = 1000m;

    private Distance(decimal metres) => Metres = metres;

    public decimal Metres { get; }

    public decimal Kilometres => Metres / MetresPerKilometre;

    public decimal Miles => Metres / MetresPerMile;

    public static Distance Zero => default;

    /// <summary>A distance of so many metres.</summary>
    public static Distance FromMetres(decimal metres) => new(metres);

    /// <summary>A distance of so many kilometres of 1000 m.</summary>
    public static Distance FromKilometres(decimal kilometres) => new(kilometres * MetresPerKilometre);

    /// <summary>A distance of so many international miles of 1609.344 m.</summary>
    public static Distance FromMiles(decimal miles) => new(miles * MetresPerMile);

    public static Distance operator +(Distance left, Distance right) => new(left.Metres + right.Metres);
    public static Distance operator -(Distance left, Distance right) => new(left.Metres - right.Metres);

    public static bool operator <(Distance left, Distance right) => left.Metres < right.Metres;
    public static bool operator >(Distance left, Distance right) => left.Metres > right.Metres;
    public static bool operator <=(Distance left, Distance right) => left.Metres <= right.Metres;
    public static bool operator >=(Distance left, Distance right) => left.Metres >= right.Metres;

    public int CompareTo(Distance other) => Metres.CompareTo(other.Metres);

    public override string ToString() => $"{Kilometres:#,0} km";
}
