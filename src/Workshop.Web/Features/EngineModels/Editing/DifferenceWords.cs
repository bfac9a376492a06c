using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Workshop.Domain.EngineModels;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>One difference as it is answered: for programs by path and value, for people in words.</summary>
/// <param name="Path">Entries of lists by what they are called: <c>fasteners[drain-plug].torqueNm</c>.</param>
/// <param name="Before">What stood there; absent for what was added.</param>
/// <param name="After">What stands there; absent for what was removed.</param>
/// <param name="Place">In words: "Fasteners, Oil drain plug, final torque".</param>
/// <param name="BeforeInWords">With its unit.</param>
/// <param name="AfterInWords">With its unit.</param>
public sealed record Difference(
    string Path, DifferenceKind Kind, JsonElement? Before, JsonElement? After, string Place, string BeforeInWords, string AfterInWords);

/// <summary>Says differences with the words of the forms.</summary>
internal static partial class DifferenceWords
{
    public static IReadOnlyList<Difference> Say(JsonNode before, JsonNode after) =>
        [.. SpecificationDifferences.Between(before, after).Select(d => Say(d, before, after))];

    private static Difference Say(SpecificationDifference difference, JsonNode before, JsonNode after)
    {
        var (place, shape) = Place(difference.Path, before, after);
        var reordered = difference.Kind == DifferenceKind.Reordered;
        return new Difference(
            difference.Path.ToString(), difference.Kind, Element(difference.Before), Element(difference.After), place,
            reordered ? $"in the order {Joined(difference.Before)}" : Describe(shape, difference.Before),
            reordered ? $"in the order {Joined(difference.After)}" : Describe(shape, difference.After));
    }

    private static JsonElement? Element(JsonNode? node) => node is null ? null : JsonSerializer.SerializeToElement(node);

    private static string Joined(JsonNode? keys) => string.Join(", ", keys?.AsArray().Select(k => k?.ToString()) ?? []);

    private static (string Place, FieldShape? Shape) Place(DocumentPath path, JsonNode before, JsonNode after)
    {
        var words = new List<string>();
        var members = FieldShape.OfDocument;
        FieldShape? shape = null;
        var at = DocumentPath.Whole;
        foreach (var step in path.Steps)
        {
            if (step.IsKey)
            {
                at = at.Entry(step.Name);
                words.Add((at.In(after) ?? at.In(before))?["name"]?.ToString() ?? step.Name);
                shape = shape is null ? null : shape with { Kind = FieldKind.Group };
                continue;
            }

            at = at.Member(step.Name);
            shape = members.FirstOrDefault(m => m.Name == step.Name);
            members = shape?.Members ?? [];
            words.Add(shape?.Label.Split(',')[0] ?? Spoken(step.Name));
        }

        return (string.Join(", ", words), shape);
    }

    /// <summary>A value in words, a record member by member.</summary>
    public static string Describe(FieldShape? shape, JsonNode? value) => value switch
    {
        null => "nothing",
        JsonArray { Count: 0 } => "none",
        JsonArray list => string.Join("; ", list.Select(entry => entry is JsonObject && shape?.Kind == FieldKind.Rows
            ? $"({Members(shape, entry)})" : Scalar(shape, entry))),
        JsonObject record => shape is null ? Scalar(null, record) : Members(shape, record),
        _ => Scalar(shape, value),
    };

    private static string Members(FieldShape shape, JsonNode record) => string.Join("; ", shape.Members
        .Where(m => record[m.Name] is not (null or JsonArray { Count: 0 }))
        .Select(m => $"{m.Label.ToLowerInvariant()} {Describe(m, record[m.Name])}"));

    private static string Scalar(FieldShape? shape, JsonNode? value)
    {
        var text = value is JsonObject ? ChoiceLists.ToField(value) : FormValues.ToText(value);
        return text.Length == 0 ? "empty"
            : shape?.Kind == FieldKind.Tick ? text == "true" ? "yes" : "no"
            : shape?.Kind == FieldKind.Word ? Spoken(text)
            : UnitOf(shape) is { } unit ? $"{text} {unit}"
            : text;
    }

    /// <summary>The hint's first word, where it is all that stands before a comma.</summary>
    private static string? UnitOf(FieldShape? shape) =>
        shape is not null && FieldShape.IsNumber(shape.Type) && shape.Hint?.Split([',', ';'])[0] is { } unit && !unit.Contains(' ') ? unit : null;

    /// <summary>"shimUnderBucket" is "shim under bucket".</summary>
    public static string Spoken(string word) => Humps().Replace(word, m => $" {m.Value.ToLowerInvariant()}");

    [GeneratedRegex("[A-Z]")]
    private static partial Regex Humps();
}
