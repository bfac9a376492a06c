using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>
/// Brings a draft onto the current version, when somebody else has published one since it was begun: the person's changes are made
/// to it. Where both changed the same place to different values, the person says whose stands; nobody's work is lost unseen.
/// </summary>
public static class RebaseDraft
{
    /// <summary>Whose value stands where both changed the same place.</summary>
    public enum Whose
    {
        Mine,
        Theirs,
    }

    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        /// <summary>Asked for where both changed the same place.</summary>
        public Whose? Take { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }
    }

    public static async Task<Outcome<KeptDraft>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await DraftBooks.Read(db, request.Id, actor, ct)).TryGet(out var books, out var problem))
        {
            return problem;
        }

        if (books.Stale(request.RowVersion!.Value) is { } stale)
        {
            return stale;
        }

        if (books.Model is not { } model || books.Draft is not { } draft || draft.BasedOnVersion == model.CurrentVersion)
        {
            return Problem.Conflict("draft-current", "There is no draft that is based on an older version.");
        }

        var current = DraftBooks.Json(await db.EngineModelVersions.AsNoTracking()
            .Where(v => v.EngineModelId == model.Id && v.Version == model.CurrentVersion).Select(v => v.Specification).SingleAsync(ct));
        var mine = SpecificationDifferences.Between(books.BaseDocument, DraftBooks.Json(draft.Specification));
        var theirs = SpecificationDifferences.Between(books.BaseDocument, current);
        var conflicts = SpecificationDifferences.Conflicts(mine, theirs);
        if (conflicts.Count > 0 && request.Take is null)
        {
            return Problem.Impossible("changed-by-both",
            [
                .. conflicts.Select(c => new FieldFault(
                    $"{SpecificationDocument.Field}.{c.Path}", $"{c.Path} was changed in version {model.CurrentVersion} too: say whose value stands.")),
                new FieldFault("take", "take is empty: mine or theirs is allowed."),
            ]);
        }

        var taken = request.Take == Whose.Theirs ? [.. mine.Except(conflicts)] : mine;
        var merged = SpecificationDifferences.Apply(current, taken);
        if (!SpecificationDocument.Parse(JsonSerializer.SerializeToElement(merged)).TryGet(out var specification, out problem))
        {
            return problem;
        }

        // A check of mine or of theirs holds only for the very figures that were compared.
        var withChecks = CheckedFigures.Carry(DraftBooks.Json(specification), DraftBooks.Json(draft.Specification), current);
        draft.Specification = withChecks.Deserialize<EngineSpecification>(WorkshopJson.Options)!;
        draft.BasedOnVersion = model.CurrentVersion;
        draft.ChangedAt = clock.GetCurrentInstant();
        return await DraftBooks.Save(db, draft, ct);
    }
}
