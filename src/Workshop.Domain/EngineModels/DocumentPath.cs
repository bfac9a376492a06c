using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace Workshop.Domain.EngineModels;

/// <summary>One step into a document: to a member by its name, or to the entry of a list by its key.</summary>
/// <param name="IsKey">The name is the key of an entry.</param>
public readonly record struct DocumentStep(string Name, bool IsKey);

/// <summary>
/// A place in a specification that stays the same place when entries are added before it: members by name, entries of a list
/// by what the workshop calls them, as in <c>serviceItems[oil-and-filter].interval.everyKm</c>.
/// </summary>
[JsonConverter(typeof(DocumentPathJson))]
public sealed record DocumentPath
{
    public static readonly DocumentPath Whole = new([]);

    private DocumentPath(IReadOnlyList<DocumentStep> steps) => Steps = steps;

    public IReadOnlyList<DocumentStep> Steps { get; }

    public DocumentPath Member(string name) => new(Steps.Append(new DocumentStep(name, IsKey: false)).ToArray());

    public DocumentPath Entry(string key) => new(Steps.Append(new DocumentStep(key, IsKey: true)).ToArray());

    /// <summary>Whether the other place is this one or lies within it.</summary>
    public bool Holds(DocumentPath other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return other.Steps.Count >= Steps.Count && Steps.SequenceEqual(other.Steps.Take(Steps.Count));
    }

    /// <summary>What stands at this place; nothing where the document has no such place.</summary>
    public JsonNode? In(JsonNode document)
    {
        JsonNode? at = document;
        foreach (var step in Steps)
        {
            at = step.IsKey
                ? (at as JsonArray)?.FirstOrDefault(entry => DocumentKeys.Of(entry) == step.Name)
                : (at as JsonObject)?[step.Name];
        }

        return at;
    }

    public bool Equals(DocumentPath? other) => other is not null && Steps.SequenceEqual(other.Steps);

    public override int GetHashCode() => Steps.Aggregate(0, (hash, step) => HashCode.Combine(hash, step));

    public override string ToString() =>
        string.Concat(Steps.Select((step, i) => step.IsKey ? $"[{step.Name}]" : i == 0 ? step.Name : $".{step.Name}"));

    /// <summary>Reads what <see cref="ToString"/> writes; false where it is no path.</summary>
    public static bool TryParse(string? text, out DocumentPath path)
    {
        path = Whole;
        var rest = text ?? "";
        while (rest.Length > 0)
        {
            var isKey = rest[0] == '[';
            var end = isKey ? rest.IndexOf(']', StringComparison.Ordinal) : rest.IndexOfAny(['.', '['], 1);
            if (isKey && end < 0)
            {
                return false;
            }

            var name = isKey ? rest[1..end] : end < 0 ? rest : rest[..end];
            path = isKey ? path.Entry(name) : path.Member(name.TrimStart('.'));
            rest = isKey ? rest[(end + 1)..] : end < 0 ? "" : rest[end..];
            if (name.Trim('.').Length == 0)
            {
                return false;
            }
        }

        return true;
    }
}

/// <summary>By what an entry of a list is known: its code, else what tells it from the others beside it.</summary>
public static class DocumentKeys
{
    private static readonly string[] Names = ["code", "partCode", "number", "name", "kind"];

    /// <summary>Nothing where the entry has no key: a word or a number of a plain list.</summary>
    public static string? Of(JsonNode? entry) =>
        entry is not JsonObject record ? null
        : record["side"] is { } side && record["lobe"] is { } ofSide ? $"{side}/{ofSide}"
        : record["camshaft"] is { } camshaft && record["side"] is { } timed ? $"{camshaft}/{timed}"
        : record["valve"] is { } valve ? record["lobe"] is { } lobe ? $"{valve}/{lobe}" : valve.ToString()
        : Names.Select(name => record[name]?.ToString()).FirstOrDefault(text => !string.IsNullOrEmpty(text));

    /// <summary>The keys of a list in its order; nothing where one has none, or two have the same.</summary>
    public static IReadOnlyList<string>? Of(JsonArray list)
    {
        ArgumentNullException.ThrowIfNull(list);
        var keys = list.Select(Of).OfType<string>().ToArray();
        return keys.Length == list.Count && keys.Distinct(StringComparer.Ordinal).Count() == keys.Length ? keys : null;
    }
}

internal sealed class DocumentPathJson : JsonConverter<DocumentPath>
{
    public override DocumentPath Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        DocumentPath.TryParse(reader.GetString(), out var path) ? path : throw new JsonException($"\"{reader.GetString()}\" is no path of a document.");

    public override void Write(Utf8JsonWriter writer, DocumentPath value, JsonSerializerOptions options) =>
        writer.WriteStringValue(value.ToString());
}
