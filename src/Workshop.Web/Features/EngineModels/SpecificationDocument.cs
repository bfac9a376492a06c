using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.RegularExpressions;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

/// <summary>
/// Reads a specification that somebody sends: first whether it has the form, then whether it holds together. Every fault
/// comes with its path in the document.
/// </summary>
internal static partial class SpecificationDocument
{
    public const string Field = "specification";

    public static Outcome<EngineSpecification> Read(JsonElement document, bool confirmUnusual) =>
        Parse(document).Then(specification => Judge(specification, confirmUnusual));

    /// <summary>Whether the document has the form; whether it holds together is not asked.</summary>
    public static Outcome<EngineSpecification> Parse(JsonElement document)
    {
        if (RefusedTrain(document) is { } train)
        {
            return train;
        }

        try
        {
            return document.Deserialize<EngineSpecification>(WorkshopJson.Documents)
                ?? throw new JsonException("It is null.");
        }
        catch (JsonException fault)
        {
            return Problem.Malformed([Explain(document, fault)]);
        }
    }

    /// <summary>Whether what has the form holds together; what is only unusual has to be confirmed.</summary>
    public static Outcome<EngineSpecification> Judge(EngineSpecification specification, bool confirmUnusual)
    {
        var (faults, toConfirm) = Findings(specification);
        if (faults.Count > 0)
        {
            return Problem.Impossible("specification-faulty", faults);
        }

        return toConfirm.Count == 0 || confirmUnusual
            ? specification
            : Problem.Impossible("specification-unusual",
            [
                .. toConfirm,
                new FieldFault("confirmUnusual", "confirmUnusual is false: set it when the maker's document really says so."),
            ]);
    }

    /// <summary>What is wrong and what only looks wrong, by path below <see cref="Field"/>.</summary>
    public static (IReadOnlyList<FieldFault> Faults, IReadOnlyList<FieldFault> ToConfirm) Findings(EngineSpecification specification)
    {
        var findings = SpecificationCheck.Of(specification);
        return (Below(findings.Faults), Below(findings.ToConfirm));
    }

    /// <summary>Said in words, since these exist and somebody will try.</summary>
    private static Problem? RefusedTrain(JsonElement document)
    {
        if (document.ValueKind != JsonValueKind.Object
            || !document.TryGetProperty("valveTrain", out var given) || given.ValueKind != JsonValueKind.String
            || Enum.TryParse<ValveTrainKind>(given.GetString(), ignoreCase: true, out _))
        {
            return null;
        }

        return Problem.Impossible("valve-train-refused", $"{Field}.valveTrain",
            $"{Field}.valveTrain is \"{given.GetString()}\": {Words(typeof(ValveTrainKind))} are known. Positively closed trains, with an opening and a closing shim, and hydraulic ones are set in other ways and are not kept here.");
    }

    private static List<FieldFault> Below(IReadOnlyList<FieldFault> faults) =>
        [.. faults.Select(f => new FieldFault($"{Field}.{f.Field}", $"{Field}.{f.Sentence}"))];

    private static FieldFault Explain(JsonElement document, JsonException fault)
    {
        var path = fault.Path is { Length: > 2 } inside ? $"{Field}.{inside[2..]}" : Field;
        var (expected, found) = Follow(document, fault.Path ?? "$");
        var value = found is { } element ? $" is {Shortened(element.GetRawText())}" : "";
        var reason = expected is { IsEnum: true } ? $"{Words(expected)} are allowed" : InWords(fault);
        return new FieldFault(path, $"{path}{value}: {reason}.");
    }

    /// <summary>The reader's own messages name types of the program; what they say can be said without.</summary>
    private static string InWords(JsonException fault)
    {
        var said = fault.Message.Split(" Path:")[0].TrimEnd('.');
        return Missing().Match(said) is { Success: true } missing ? $"it lacks {missing.Groups[1].Value}"
            : Unknown().Match(said) is { Success: true } unknown ? $"{unknown.Groups[1].Value} is not known there"
            : said.Contains("could not be converted", StringComparison.Ordinal) ? "it is not of the form asked for; read a specification to see one that is"
            : said;
    }

    [GeneratedRegex("missing required properties including: (.+)$")]
    private static partial Regex Missing();

    [GeneratedRegex("^The JSON property ('.+?') could not be mapped")]
    private static partial Regex Unknown();

    /// <summary>Which type the document should have at a path such as <c>$.fasteners[2].treatment</c>, and what stands there.</summary>
    private static (Type? Expected, JsonElement? Found) Follow(JsonElement document, string path)
    {
        Type? type = typeof(EngineSpecification);
        JsonElement? element = document;
        foreach (var step in path.Split(['.', '['], StringSplitOptions.RemoveEmptyEntries).Skip(1))
        {
            if (step.EndsWith(']') && int.TryParse(step[..^1], CultureInfo.InvariantCulture, out var index))
            {
                type = type?.GenericTypeArguments.FirstOrDefault();
                element = element is { ValueKind: JsonValueKind.Array } array && index < array.GetArrayLength() ? array[index] : null;
                continue;
            }

            JsonTypeInfo? info = type is null ? null : WorkshopJson.Documents.GetTypeInfo(type);
            type = info?.Properties.FirstOrDefault(p => string.Equals(p.Name, step, StringComparison.OrdinalIgnoreCase))?.PropertyType;
            element = element is { ValueKind: JsonValueKind.Object } owner && owner.TryGetProperty(step, out var child) ? child : null;
        }

        return (type is null ? null : Nullable.GetUnderlyingType(type) ?? type, element);
    }

    private static string Words(Type type) => string.Join(", ", Enum.GetNames(type).Select(JsonNamingPolicy.CamelCase.ConvertName));

    private static string Shortened(string text) => text.Length <= 60 ? text : $"{text[..57]}...";
}
