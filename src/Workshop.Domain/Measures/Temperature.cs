using System.Text.Json.Serialization;

namespace Workshop.Domain.Measures;

/// <summary>Temperature of a part in degrees Celsius, -40 to 200, to 0.1 degree.</summary>
[JsonConverter(typeof(TemperatureJson))]
public readonly record struct Temperature : IComparable<Temperature>
{
    public const decimal SmallestC = -40m;
    public const decimal LargestC = 200m;
    public const int DecimalsC = 1;

    private Temperature(decimal celsius) => Celsius = celsius;

    public decimal Celsius { get; }

    /// <summary>A temperature of so many degrees Celsius, -40 to 200 in steps of 0.1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside -40 to 200 degrees, or finer than 0.1 degree.</exception>
    public static Temperature FromCelsius(decimal celsius) =>
        new(Allowed.Within(celsius, SmallestC, LargestC, DecimalsC));

    public int CompareTo(Temperature other) => Celsius.CompareTo(other.Celsius);

    public static bool operator <(Temperature left, Temperature right) => left.Celsius < right.Celsius;
    public static bool operator >(Temperature left, Temperature right) => left.Celsius > right.Celsius;
    public static bool operator <=(Temperature left, Temperature right) => left.Celsius <= right.Celsius;
    public static bool operator >=(Temperature left, Temperature right) => left.Celsius >= right.Celsius;

    public override string ToString() => $"{Celsius:0.#} °C";
}
