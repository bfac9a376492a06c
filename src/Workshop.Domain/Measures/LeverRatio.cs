using System.Text.Json.Serialization;

namespace Workshop.Domain.Measures;

/// <summary>
/// Fall of clearance, at the place where the blade goes, per millimetre of added shim; positive. 1 for buckets and where
/// the blade goes between shim and follower; (pivot to cam contact) / (pivot to stem), below 1, where the blade goes
/// between cam and finger follower with the shim on the stem. Above 1 or below 0.4 asks for confirmation.
/// </summary>
[JsonConverter(typeof(LeverRatioJson))]
public readonly record struct LeverRatio
{
    public const decimal Smallest = 0.1m;
    public const decimal Largest = 2m;
    public const int Decimals = 4;
    public const decimal UsualLowest = 0.4m;
    public const decimal UsualHighest = 1m;

    private LeverRatio(decimal value) => Value = value;

    public decimal Value { get; }

    public bool AsksForConfirmation => Value is < UsualLowest or > UsualHighest;

    /// <summary>A ratio of 0.1 to 2 with up to four decimals, mm of clearance per mm of shim.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0.1 to 2, or more than four decimals.</exception>
    public static LeverRatio From(decimal value) => new(Allowed.Within(value, Smallest, Largest, Decimals));

    public override string ToString() => $"{Value:0.####}";
}
