using System.Text.Json.Nodes;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>What the codes of a form may name, from the draft itself.</summary>
internal sealed class ChoiceLists(EngineSpecification specification)
{
    /// <summary>What may be chosen, and what is chosen but no longer there, so that nothing is lost unseen.</summary>
    public IEnumerable<(string Value, string Label)> For(FieldShape shape, IReadOnlyList<string> chosen)
    {
        var known = Known(shape.Choices!.Value).ToList();
        return known.Concat(chosen.Where(c => c.Length > 0 && known.All(k => k.Value != c)).Select(c => (c, $"{c} (not in the draft)")));
    }

    private IEnumerable<(string Value, string Label)> Known(ChoiceOf choices) => choices switch
    {
        ChoiceOf.Valves => specification.Valves.Select(v => (v.Key.ToString(), v.Key.Spoken)),
        ChoiceOf.Lobes => specification.Valves
            .SelectMany(v => Enumerable.Range(1, Math.Clamp(v.Lobes, 1, 2)).Select(lobe => new LobeKey(v.Key, lobe)))
            .Select(l => ($"{l.Valve}/{l.Lobe}", l.Spoken)),
        ChoiceOf.Accesses => specification.Accesses.Select(a => (a.Code, a.Name)),
        ChoiceOf.Joints => specification.Joints.Select(j => (j.Code, j.Name)),
        ChoiceOf.Fasteners => specification.Fasteners.Select(f => (f.Code, f.Name)),
        ChoiceOf.ServiceItems => specification.ServiceItems.Select(i => (i.Code, i.Name)),
        ChoiceOf.Adjustments => specification.ServiceItems
            .Where(i => i.Kind == ServiceItemKind.ValveClearanceAdjustment).Select(i => (i.Code, i.Name)),
        ChoiceOf.Cautions => Cautions.All.Select(c => (c.Code, c.Title)),
        ChoiceOf.Camshafts => specification.Camshafts.Select(c => (c.Code, c.Name)),
        ChoiceOf.Banks => specification.Layout.Cylinders.Select(c => c.Bank).Distinct().Select(b => (b, b)),
        ChoiceOf.Options => specification.Options.Select(o => (o.Code, o.Name)),
        _ => throw new ArgumentOutOfRangeException(nameof(choices), choices, null),
    };

    /// <summary>A chosen value as the document writes it; a lobe is a record there.</summary>
    public static JsonNode? ToDocument(FieldShape shape, string text) =>
        shape.Choices == ChoiceOf.Lobes && text.Split('/') is [var valve, var lobe] && int.TryParse(lobe, out var number)
            ? new JsonObject { ["valve"] = valve, ["lobe"] = number }
            : JsonValue.Create(text);

    public static string ToField(JsonNode? chosen) =>
        chosen is JsonObject lobe ? $"{lobe["valve"]}/{lobe["lobe"]}" : chosen?.ToString() ?? "";
}
