using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Workshop.Domain.EngineModels;

/// <summary>Which side of the combustion chamber a valve is on.</summary>
public enum Side
{
    Intake,
    Exhaust,
}

/// <summary>
/// A valve of an engine: cylinder number, side, and position along that side, counted in the direction that the engine
/// model states. Written <c>1-intake-2</c>.
/// </summary>
[JsonConverter(typeof(ValveKeyJson))]
public readonly record struct ValveKey(int Cylinder, Side Side, int Position) : IComparable<ValveKey>, IParsable<ValveKey>
{
    public const string Form = "cylinder-side-position, for example 1-intake-2";

    /// <summary>As a person says it: "cylinder 1, intake 2".</summary>
    public string Spoken => $"cylinder {Cylinder}, {SideWord} {Position}";

    private string SideWord => Side == Side.Intake ? "intake" : "exhaust";

    public static ValveKey Parse(string s, IFormatProvider? provider = null) =>
        TryParse(s, provider, out var key) ? key : throw new FormatException($"\"{s}\" is not a valve: {Form}.");

    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out ValveKey result)
    {
        result = default;
        if (s?.Split('-') is not [var cylinderText, var sideText, var positionText]
            || !int.TryParse(cylinderText, NumberStyles.None, CultureInfo.InvariantCulture, out var cylinder)
            || !int.TryParse(positionText, NumberStyles.None, CultureInfo.InvariantCulture, out var position)
            || cylinder is < 1 or > 16 || position is < 1 or > 4)
        {
            return false;
        }

        Side? side = sideText.ToLowerInvariant() switch { "intake" => Side.Intake, "exhaust" => Side.Exhaust, _ => null };
        if (side is null)
        {
            return false;
        }

        result = new ValveKey(cylinder, side.Value, position);
        return true;
    }

    public int CompareTo(ValveKey other) =>
        (Cylinder, Side, Position).CompareTo((other.Cylinder, other.Side, other.Position));

    public static bool operator <(ValveKey left, ValveKey right) => left.CompareTo(right) < 0;
    public static bool operator >(ValveKey left, ValveKey right) => left.CompareTo(right) > 0;
    public static bool operator <=(ValveKey left, ValveKey right) => left.CompareTo(right) <= 0;
    public static bool operator >=(ValveKey left, ValveKey right) => left.CompareTo(right) >= 0;

    public override string ToString() => $"{Cylinder}-{SideWord}-{Position}";
}

internal sealed class ValveKeyJson : JsonConverter<ValveKey>
{
    public override ValveKey Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var text = reader.GetString();
        return ValveKey.TryParse(text, null, out var key)
            ? key
            : throw new JsonException($"\"{text}\" is not a valve: {ValveKey.Form}.");
    }

    public override void Write(Utf8JsonWriter writer, ValveKey value, JsonSerializerOptions options) =>
        writer.WriteStringValue(value.ToString());
}
