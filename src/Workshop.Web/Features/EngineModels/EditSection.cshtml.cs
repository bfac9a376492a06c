using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Web.Features.EngineModels.Editing;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

/// <summary>The form of one section of the draft, or of one entry of a section's list.</summary>
public sealed class EditSectionModel : DraftPage
{
    private SpecificationSection section = null!;
    private FormValues values = null!;

    [FromRoute(Name = "section")]
    public string Word { get; set; } = "";

    [FromRoute]
    public string? Code { get; set; }

    /// <summary>The entry whose figures a new one begins with.</summary>
    [FromQuery]
    public string? Like { get; set; }

    /// <summary>The entry is not in the draft yet.</summary>
    public bool IsNew { get; private set; }

    public bool WasRefused => Response.StatusCode >= StatusCodes.Status400BadRequest;

    /// <summary>What of the section is kept but cannot be published as it is.</summary>
    public IReadOnlyList<FieldFault> Standing { get; private set; } = [];

    public IReadOnlyList<CheckedPart> Parts { get; private set; } = [];

    public string Title => Code is null ? section.Title : Entry?["name"]?.ToString() is { Length: > 0 } name ? name : $"New {section.EntryName}";

    internal IEnumerable<FieldView> Fields => Shapes.Select(s => new FieldView(s.Shape, s.Path, values, new ChoiceLists(Draft.Specification), Code is not null));

    private JsonObject? Entry => Code is null ? null : section.Entry(Document, Code);

    private string Here => $"{Address}/{section.Word}{(Code is null ? "" : $"/{Uri.EscapeDataString(Code)}")}";

    /// <summary>The members of the section, or the entry as a group of its own, each with its path.</summary>
    private IEnumerable<(FieldShape Shape, string Path)> Shapes => Code is null
        ? section.Members.Select(m => (FieldShape.OfMember(m), $"{SpecificationDocument.Field}.{m}"))
        : [(FieldShape.OfMember(section.List) with { Kind = FieldKind.Group, Optional = false }, $"{SpecificationDocument.Field}.{section.PathOf(Document, Code)}")];

    public async Task<IActionResult> OnGet()
    {
        if (await Open() is { } refused)
        {
            return refused;
        }

        var from = Code is null ? Document : Entry ?? (Like is null ? null : section.Entry(Document, Like));
        values = AsItStands(from);
        return Show();
    }

    public async Task<IActionResult> OnPost(string? add, string? remove)
    {
        if (await Open() is { } refused)
        {
            return refused;
        }

        values = new FormValues();
        var faults = new List<FieldFault>();
        var content = new JsonObject();
        foreach (var (shape, path) in Shapes)
        {
            values.Take(Request.Form, shape, path, remove);
            content[shape.Name] = values.Read(shape, path, faults);
        }

        if (add is not null || remove is not null)
        {
            if (add is not null)
            {
                values.AddRow(add);
            }

            return Show();
        }

        if (faults.Count > 0)
        {
            Problem.Malformed(faults).AddTo(ModelState, "");
        }

        var request = new SaveSection.Request
        {
            Id = Id, Section = section.Word, Code = Code, RowVersion = RowVersion,
            Content = JsonSerializer.SerializeToElement(Code is null ? content : content[section.List]!.WithCode(Code)),
        };
        return await Write(request, SaveSection.Handle, Kept, Again, prefix: "");
    }

    public Task<IActionResult> OnPostCheck(string? path, bool compared) => Change(
        new MarkChecked.Request { Id = Id, Path = path, Compared = compared, RowVersion = RowVersion }, MarkChecked.Handle, "#checks");

    public async Task<IActionResult> OnPostRemove()
    {
        if (await Open() is { } refused)
        {
            return refused;
        }

        return await Write(
            new RemoveEntry.Request(Id, section.Word, Code ?? "", RowVersion), RemoveEntry.Handle,
            _ =>
            {
                Done = $"{Code} is taken out of the draft.";
                return Redirect($"{Address}#{section.Word}");
            },
            AsItIs);
    }

    public string NameOf(CheckedPart part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part.Path.Steps is [.., { IsKey: true } last] && Code is null ? last.Name.Replace("/", ", lobe ", StringComparison.Ordinal) : part.Path.Steps.Count == 0 ? "The whole" : Title;
    }

    private async Task<IActionResult> Change<TRequest>(TRequest request, Handle<TRequest, KeptDraft> handle, string anchor)
    {
        if (await Open() is { } refused)
        {
            return refused;
        }

        return await Write(
            request, handle,
            _ =>
            {
                Done = "Marked as checked.";
                return Redirect($"{Here}{anchor}");
            },
            AsItIs, prefix: "");
    }

    private IActionResult Kept(KeptDraft kept)
    {
        var here = kept.Faults.Where(f => f.Field.StartsWith(SpecificationDocument.Field, StringComparison.Ordinal) && IsHere(f)).ToList();
        Done = here.Count == 0 ? "Kept in the draft." : "Kept in the draft, with something to put right before it is published.";
        return Redirect(here.Count == 0 ? $"{Address}#{section.Word}" : Here);
    }

    private Task<IActionResult> AsItIs()
    {
        values = AsItStands(Code is null ? Document : Entry);
        return Again();
    }

    private async Task<IActionResult> Again()
    {
        var typed = values;
        if (await Open() is { } refused)
        {
            return refused;
        }

        values = typed;
        return Show();
    }

    private FormValues AsItStands(JsonNode? from)
    {
        var standing = new FormValues();
        foreach (var (shape, path) in Shapes)
        {
            standing.Take(Code is null ? from?[shape.Name] : from, shape, path);
        }

        return standing;
    }

    private async Task<IActionResult?> Open()
    {
        if (await Load() is { } problem)
        {
            return Refused(problem);
        }

        if (SpecificationSection.Find(Word) is not { } found || found.HasEntries != Code is not null)
        {
            return Refused(Problem.NotFound($"A section \"{Word}\" to edit"));
        }

        section = found;
        IsNew = Code is not null && Entry is null;
        return IsNew && !SaveSection.NewCode().IsMatch(Code!) ? Refused(Problem.NotFound($"\"{Code}\" in {section.Word}")) : null;
    }

    /// <summary>How the torque of a fastener that is kept lies beside what its thread can bear.</summary>
    public string? TorqueWords => section.List == "fasteners" && Draft.Specification.Fasteners.SingleOrDefault(f => f.Code == Code) is { } fastener
        ? TorquePlausibility.Of(fastener).Sentence
        : null;

    private PageResult Show()
    {
        Parts = IsNew ? [] : [.. CheckedFigures.In(Document).Where(p => PathsHere.Any(here => here.Holds(p.Path)) || (Word == "source" && p.Path.Steps.Count == 0))];
        if (!WasRefused)
        {
            Standing = IsNew ? [] : [.. Draft.Faults.Concat(Draft.ToConfirm).Where(IsHere)];
            foreach (var fault in Standing)
            {
                ModelState.AddModelError(fault.Field, fault.Sentence);
            }
        }

        return Page();
    }

    private IEnumerable<DocumentPath> PathsHere => Code is null
        ? section.Members.Where(m => m != "provenance").Select(DocumentPath.Whole.Member)
        : [DocumentPath.Whole.Member(section.List).Entry(Code)];

    private bool IsHere(FieldFault fault)
    {
        var (of, code) = PlaceOf(fault.Field);
        return of == section && (Code is null || code == Code);
    }
}
