using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Outcomes;
using Workshop.Web.Features.EngineModels.Editing;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

/// <summary>Where two versions of an engine model differ, or a manager's draft from the version that it was made from.</summary>
public sealed class DifferencesModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    /// <summary>Absent: the current one.</summary>
    [BindProperty(SupportsGet = true)]
    public int? Version { get; set; }

    /// <summary>Absent: the one before.</summary>
    [BindProperty(SupportsGet = true)]
    public int? From { get; set; }

    /// <summary>The signed-in person's draft instead of a version.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Draft { get; set; }

    public string Heading { get; private set; } = "";

    public string Name { get; private set; } = "";

    public string? Note { get; private set; }

    public IReadOnlyList<Difference> Differences { get; private set; } = [];

    public IReadOnlyList<ListVersions.Row> Versions { get; private set; } = [];

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new ListVersions.Request(Id), ListVersions.Handle)).TryGet(out var versions, out var problem))
        {
            return Refused(problem);
        }

        Versions = versions.Versions;
        var refused = Draft && await May(Policies.Manages) ? await OfDraft() : await OfVersions(Version ?? versions.CurrentVersion);
        return refused is null ? Page() : Refused(refused);
    }

    private async Task<Problem?> OfDraft()
    {
        if (!(await Read(new GetDraft.Request(Id), GetDraft.Handle)).TryGet(out var draft, out var problem))
        {
            return problem;
        }

        (Heading, Name, Differences) = ($"Your draft, against version {draft.BasedOnVersion},", $"{draft.Maker} {draft.Name}", draft.Differences);
        return null;
    }

    private async Task<Problem?> OfVersions(int version)
    {
        if (!(await Read(new GetDifferences.Request(Id, version, From), GetDifferences.Handle)).TryGet(out var answer, out var problem))
        {
            return problem;
        }

        (Version, From) = (answer.Version, answer.From);
        (Heading, Name) = ($"From version {answer.From} to version {answer.Version}", $"{answer.Maker} {answer.Name}");
        (Note, Differences) = (answer.Note, answer.Differences);
        return null;
    }
}
