using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.EngineModels.Editing;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

/// <summary>The contents of a draft: every section, what changed, what is still wrong, who keeps what; and publishing it.</summary>
public sealed class EditModel(WorkshopDbContext db) : DraftPage
{
    public const int MostDifferences = 40;
    public const int MostVisits = 20;

    private WorkshopTime time = null!;

    public string? Note { get; private set; }

    public string? List { get; private set; }

    public string? Code { get; private set; }

    public string? Like { get; private set; }

    internal IReadOnlyList<SectionRow> Sections { get; private set; } = [];

    public int OlderVisits => Draft.OpenVisits.Count(v => v.Version < Draft.CurrentVersion);

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPostAdd(string? list, string? code, string? like)
    {
        (List, Code, Like) = (list, code?.Trim(), string.IsNullOrWhiteSpace(like) ? null : like.Trim());
        if (await Load() is { } problem)
        {
            return Refused(problem);
        }

        var section = SpecificationSection.Find(list);
        if (section is not { HasEntries: true } || !SaveSection.NewCode().IsMatch(Code ?? ""))
        {
            return await Wrong("Code", $"code is \"{Code}\": small letters, digits and hyphens, 1 to {Limits.Code} of them, are allowed.");
        }

        return section.Entry(Document, Code!) is not null ? await Wrong("Code", $"code is \"{Code}\": the draft has a {section.EntryName} of that code already.")
            : Like is not null && section.Entry(Document, Like) is null ? await Wrong("Like", $"like is \"{Like}\": the draft has no {section.EntryName} of that code.")
            : Redirect($"{Address}/{section.Word}/{Code}{(Like is null ? "" : $"?like={Uri.EscapeDataString(Like)}")}");
    }

    public Task<IActionResult> OnPostPublish(string? note, bool confirmUnusual)
    {
        Note = note;
        return Write(
            new PublishDraft.Request { Id = Id, Note = note, ConfirmUnusual = confirmUnusual, RowVersion = RowVersion },
            PublishDraft.Handle,
            made =>
            {
                Done = $"Version {made.Version} is published. What is due of its motorcycles is reckoned by it; visits that were booked before keep theirs.";
                return Redirect($"/engine-models/{made.Id}");
            },
            Show, prefix: "");
    }

    public Task<IActionResult> OnPostDiscard() => Write(
        new DiscardDraft.Request(Id, RowVersion), DiscardDraft.Handle,
        discarded =>
        {
            Done = "The draft is discarded.";
            return Redirect(discarded.InBooks ? $"/engine-models/{Id}" : "/engine-models");
        },
        Show, prefix: "");

    public Task<IActionResult> OnPostRebase(RebaseDraft.Whose? take) => Write(
        new RebaseDraft.Request { Id = Id, Take = take, RowVersion = RowVersion }, RebaseDraft.Handle,
        kept =>
        {
            Done = $"Your changes are made to version {kept.BasedOnVersion}. Look through them before you publish.";
            return Redirect($"{Address}#changed");
        },
        Show, prefix: "");

    public string Day(Instant instant) => time.DayOf(instant).ToString("uuuu-MM-dd", null);

    private Task<IActionResult> Wrong(string field, string sentence)
    {
        ModelState.AddModelError(field, sentence);
        Response.StatusCode = StatusCodes.Status400BadRequest;
        return Show();
    }

    private async Task<IActionResult> Show()
    {
        if (await Load() is { } problem)
        {
            return Refused(problem);
        }

        time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        var faults = Draft.Faults.Select(f => PlaceOf(f.Field)).ToList();
        var changes = Draft.Differences
            .Select(d => (Path: DocumentPath.TryParse(d.Path, out var path) ? path : DocumentPath.Whole, d.Kind)).ToList();
        var parts = CheckedFigures.In(Document);
        Sections = [.. SpecificationSection.All.Select(section => new SectionRow(
            section,
            changes.Count(c => c.Path.Steps is [{ } first, ..] && section.Members.Contains(first.Name)),
            faults.Count(f => f.Section == section && f.Code is null),
            CheckedWords(parts.Where(p => p.Path.Steps is [{ } first, ..] ? !section.HasEntries && section.Members.Contains(first.Name) : section.Word == "source")),
            section.HasEntries ? [.. section.Entries(Document).Select(e => EntryOf(section, e, changes, faults, parts))] : []))];
        return Page();
    }

    private static EntryRow EntryOf(
        SpecificationSection section, JsonObject entry, List<(DocumentPath Path, DifferenceKind Kind)> changes,
        List<(SpecificationSection? Section, string? Code)> faults, IReadOnlyList<CheckedPart> parts)
    {
        var code = DocumentKeys.Of(entry) ?? "";
        var place = DocumentPath.Whole.Member(section.List).Entry(code);
        var own = changes.Where(c => place.Holds(c.Path)).ToList();
        return new EntryRow(
            code, entry["name"]?.ToString() is { Length: > 0 } name ? name : code,
            own.Any(c => c.Kind == DifferenceKind.Added && c.Path.Equals(place)) ? "new" : own.Count > 0 ? $"changed, {own.Count}" : "the same",
            faults.Count(f => f.Section == section && f.Code == code),
            CheckedWords(parts.Where(p => p.Path.Equals(place))));
    }

    private static string CheckedWords(IEnumerable<CheckedPart> parts)
    {
        var all = parts.ToList();
        var nobody = all.Count(p => p.CheckedBy is null);
        return all.Count == 0 ? "with the whole"
            : nobody == 0 ? $"by {string.Join(", ", all.Select(p => $"{p.CheckedBy} on {p.CheckedOn}").Distinct())}"
            : nobody == all.Count ? "by nobody" : $"{nobody} of {all.Count} by nobody";
    }
}

/// <summary>A section in the contents of a draft.</summary>
internal sealed record SectionRow(
    SpecificationSection Section, int Changes, int Faults, string Checked, IReadOnlyList<EntryRow> Entries);

/// <param name="Standing">Against the version that the draft was made from.</param>
internal sealed record EntryRow(string Code, string Name, string Standing, int Faults, string Checked);
