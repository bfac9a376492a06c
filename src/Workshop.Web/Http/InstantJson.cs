using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Text;

namespace Workshop.Web.Http;

/// <summary>
/// A moment as RFC 3339, section 5.6, has it: read with Z or with an offset, since clients write either; written in UTC. A leap second
/// is refused, since neither the service's time nor PostgreSQL's knows one.
/// </summary>
internal sealed class InstantJson : JsonConverter<Instant>
{
    public override Instant Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var text = reader.TokenType == JsonTokenType.String ? reader.GetString()! : "";
        return OffsetDateTimePattern.Rfc3339.Parse(text).TryGetValue(default, out var moment)
            ? moment.ToInstant()
            : throw new JsonException($"\"{text}\" is no moment; one is written like 2026-11-26T08:30:00Z or 2026-11-26T09:30:00+01:00.");
    }

    public override void Write(Utf8JsonWriter writer, Instant value, JsonSerializerOptions options) =>
        writer.WriteStringValue(InstantPattern.ExtendedIso.Format(value));
}
