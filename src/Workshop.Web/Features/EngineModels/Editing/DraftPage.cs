using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>What the pages that change an engine model show alike: the signed-in person's draft as it stands.</summary>
public abstract class DraftPage : WorkshopPage
{
    [FromRoute]
    public Guid Id { get; set; }

    /// <summary>The draft's, as the form was made from.</summary>
    [BindProperty]
    public uint RowVersion { get; set; }

    public GetDraft.Answer Draft { get; private set; } = null!;

    /// <summary>The draft as a document.</summary>
    public JsonNode Document { get; private set; } = null!;

    public string Address => $"/engine-models/{Id}/edit";

    /// <summary>Where it is read; the list, for an engine model that is not in the books yet.</summary>
    public string ReadAddress => Draft.CurrentVersion > 0 ? $"/engine-models/{Id}" : "/engine-models";

    protected async Task<Problem?> Load()
    {
        if (!(await Read(new GetDraft.Request(Id), GetDraft.Handle)).TryGet(out var draft, out var problem))
        {
            return problem;
        }

        Draft = draft;
        Document = DraftBooks.Json(draft.Specification);
        return null;
    }

    /// <summary>The section and the entry that a fault's path lies in.</summary>
    internal (SpecificationSection? Section, string? Code) PlaceOf(string path)
    {
        var inside = path.StartsWith($"{SpecificationDocument.Field}.", StringComparison.Ordinal) ? path[(SpecificationDocument.Field.Length + 1)..] : path;
        var end = inside.IndexOfAny(['.', '[']);
        var section = SpecificationSection.Covering(end < 0 ? inside : inside[..end]);
        if (section is not { HasEntries: true } || end < 0 || inside[end] != '['
            || !int.TryParse(inside[(end + 1)..].Split(']')[0], out var index))
        {
            return (section, null);
        }

        return (section, DocumentKeys.Of(section.Entries(Document).ElementAtOrDefault(index)));
    }

    /// <summary>The address of the form that a fault's field stands in, and of the field there.</summary>
    public string LinkTo(string path)
    {
        var (section, code) = PlaceOf(path);
        return section is null ? Address
            : section.HasEntries && code is null ? $"{Address}#{section.Word}"
            : $"{Address}/{section.Word}{(code is null ? "" : $"/{Uri.EscapeDataString(code)}")}#{FieldView.IdOf(path)}";
    }
}
