using System.Text.Json.Nodes;

namespace Workshop.Domain.EngineModels;

/// <summary>Figures that name the document they come from, and who compared them with it.</summary>
/// <param name="Path">Of the figures: a fastener, a row of limits, the whole specification.</param>
public sealed record CheckedPart(DocumentPath Path, string Source, string Edition, string? CheckedBy, string? CheckedOn);

/// <summary>
/// Who checked what. A check holds for the figures that were compared: when one of them changes, nobody has checked them. Figures
/// within that name a document of their own are checked on their own.
/// </summary>
public static class CheckedFigures
{
    private const string Provenance = "provenance";
    private const string By = "checkedBy";
    private const string On = "checkedOn";

    /// <summary>All parts of a specification that name a document, the whole first.</summary>
    public static IReadOnlyList<CheckedPart> In(JsonNode document) =>
        Owners(DocumentPath.Whole, document).Select(owner => new CheckedPart(
            owner.Path,
            Text(owner.Figures, "source") ?? "",
            Text(owner.Figures, "edition") ?? "",
            Text(owner.Figures, By),
            Text(owner.Figures, On))).ToArray();

    /// <summary>
    /// The document with each check that still holds: that of an earlier document, the first that has one, in which the same
    /// figures stood under the same document's name. All other checks are taken out, whatever the document says of itself.
    /// </summary>
    public static JsonNode Carry(JsonNode document, params IReadOnlyList<JsonNode> earlier)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(earlier);
        var made = document.DeepClone();
        foreach (var (path, figures) in Owners(DocumentPath.Whole, made).ToArray())
        {
            var plain = WithoutChecks(figures);
            var holding = earlier.Select(path.In).OfType<JsonObject>()
                .FirstOrDefault(before => Text(before, By) is not null && JsonNode.DeepEquals(WithoutChecks(before), plain));
            Set(figures, holding is null ? null : Text(holding, By), holding is null ? null : Text(holding, On));
        }

        return made;
    }

    /// <summary>The document with the figures at a place marked as checked; nothing where no figures there name a document.</summary>
    /// <param name="document">A specification as JSON.</param>
    /// <param name="path">Of the figures, as <see cref="In"/> gives it.</param>
    /// <param name="by">The person's name.</param>
    /// <param name="on">The day, by ISO 8601.</param>
    public static JsonNode? Mark(JsonNode document, DocumentPath path, string by, string on)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(path);
        var made = document.DeepClone();
        if (path.In(made) is not JsonObject figures || figures[Provenance] is not JsonObject)
        {
            return null;
        }

        Set(figures, by, on);
        return made;
    }

    private static IEnumerable<(DocumentPath Path, JsonObject Figures)> Owners(DocumentPath path, JsonNode? node)
    {
        if (node is JsonObject record)
        {
            var own = record[Provenance] is JsonObject ? [(path, record)] : Enumerable.Empty<(DocumentPath, JsonObject)>();
            return own.Concat(record.Where(m => m.Key != Provenance).SelectMany(m => Owners(path.Member(m.Key), m.Value)));
        }

        return node is JsonArray list
            ? list.Where(entry => DocumentKeys.Of(entry) is not null).SelectMany(entry => Owners(path.Entry(DocumentKeys.Of(entry)!), entry))
            : [];
    }

    /// <summary>The figures with their source and edition, but neither who checked them nor what names a document of its own.</summary>
    private static JsonObject WithoutChecks(JsonObject figures)
    {
        var plain = (JsonObject)figures.DeepClone();
        Set(plain, null, null);
        foreach (var name in plain.Select(m => m.Key).ToArray())
        {
            if (name != Provenance)
            {
                plain[name] = Pruned(plain[name]);
            }
        }

        return plain;
    }

    private static JsonNode? Pruned(JsonNode? node)
    {
        if (node is JsonObject record)
        {
            if (record[Provenance] is JsonObject)
            {
                return null;
            }

            foreach (var name in record.Select(m => m.Key).ToArray())
            {
                record[name] = Pruned(record[name]);
            }

            return record.DeepClone();
        }

        if (node is JsonArray list)
        {
            var kept = new JsonArray();
            foreach (var entry in list.Where(entry => entry is not JsonObject owner || owner[Provenance] is not JsonObject))
            {
                kept.Add(Pruned(entry?.DeepClone()));
            }

            return kept;
        }

        return node?.DeepClone();
    }

    private static string? Text(JsonObject figures, string name) => figures[Provenance]?[name]?.ToString();

    private static void Set(JsonObject figures, string? by, string? on)
    {
        var provenance = figures[Provenance]!.AsObject();
        provenance[By] = by;
        provenance[On] = on;
    }
}
