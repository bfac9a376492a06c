using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using FluentValidation;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>
/// Keeps one section, or one entry of a section's list, in the person's draft. It must have the form of its part of the
/// specification; whether the whole holds together is answered, and asked for only when the draft is published.
/// </summary>
public static partial class SaveSection
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public string? Section { get; init; }

        /// <summary>Of the entry; absent where the section is kept whole.</summary>
        [JsonIgnore]
        public string? Code { get; init; }

        /// <summary>An object with the section's members, or the entry, in the form of the specification.</summary>
        public JsonElement? Content { get; init; }

        /// <summary>The draft's; 0 where none has been begun.</summary>
        [JsonIgnore]
        public uint? RowVersion { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Section).Must(s => SpecificationSection.Find(s) is not null)
                .WithMessage((_, s) => $"section is \"{s}\": one of {string.Join(", ", SpecificationSection.All.Select(k => k.Word))} is allowed.");
            RuleFor(r => r.Code).Must(c => c is null || c.Length <= Limits.Code)
                .WithMessage((_, c) => $"code is \"{c}\": a code has 1 to {Limits.Code} characters.");
            RuleFor(r => r.Content).Must(c => c is { ValueKind: JsonValueKind.Object })
                .WithMessage("content is empty: give an object in the form of that part of the specification.");
        }
    }

    public static Task<Outcome<KeptDraft>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var section = SpecificationSection.Find(request.Section)!;
        var content = JsonObject.Create(request.Content!.Value)!;
        return DraftBooks.Change(
            db, request.Id, request.RowVersion!.Value,
            (document, books) => Put(section, request.Code, content, document).Then<JsonNode>(put => books.WithChecks(put)), actor, clock, ct);
    }

    private static Outcome<JsonNode> Put(SpecificationSection section, string? code, JsonObject content, JsonNode document) =>
        code is null ? PutWhole(section, content, document)
        : section.HasEntries ? PutEntry(section, code, content, document)
        : Problem.NotFound($"An entry \"{code}\" of {section.Word}, which is kept whole,");

    private static Outcome<JsonNode> PutWhole(SpecificationSection section, JsonObject content, JsonNode document)
    {
        if (content.FirstOrDefault(m => !section.Members.Contains(m.Key)).Key is { } unknown)
        {
            return Problem.Malformed([new FieldFault($"content.{unknown}",
                $"content.{unknown} is not of {section.Word}: {string.Join(", ", section.Members)} is allowed.")]);
        }

        foreach (var (member, value) in content)
        {
            document[member] = value?.DeepClone();
        }

        return document;
    }

    private static Outcome<JsonNode> PutEntry(SpecificationSection section, string code, JsonObject content, JsonNode document)
    {
        if (content["code"] is { } given && given.ToString() != code)
        {
            return Problem.Malformed([new FieldFault("content.code", $"content.code is \"{given}\", but the entry is \"{code}\": a code stays what it is.")]);
        }

        var entry = (JsonObject)content.DeepClone();
        entry["code"] = code;
        var list = document[section.List]!.AsArray();
        if (section.Entry(document, code) is { } standing)
        {
            list[list.IndexOf(standing)] = entry;
            return document;
        }

        if (!NewCode().IsMatch(code))
        {
            return Problem.Malformed([new FieldFault("code",
                $"code is \"{code}\": small letters, digits and hyphens, 1 to {Limits.Code} of them, are allowed.")]);
        }

        list.Add(entry);
        return document;
    }

    /// <summary>Codes stand in addresses and in the history, so new ones are plain.</summary>
    [GeneratedRegex("^[a-z0-9][a-z0-9-]{0,59}$")]
    internal static partial Regex NewCode();
}
