using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>What a change of a draft answers: what is still to be put right, and the draft's version for the next change.</summary>
/// <param name="BasedOnVersion">The version that it was made from; 0 for a new engine model.</param>
/// <param name="Faults">To be put right before it is published.</param>
/// <param name="ToConfirm">Unusual: to be confirmed when it is published.</param>
public sealed record KeptDraft(
    Guid Id, int BasedOnVersion, IReadOnlyList<FieldFault> Faults, IReadOnlyList<FieldFault> ToConfirm, uint RowVersion) : IHasVersion;

/// <summary>One person's draft of one engine model, or the current version where nothing has been changed yet.</summary>
internal sealed record DraftBooks(EngineModel? Model, EngineModelVersion? Base, SpecificationDraft? Draft, uint RowVersion)
{
    public EngineSpecification Specification => Draft?.Specification ?? Base!.Specification;

    public int BasedOnVersion => Draft?.BasedOnVersion ?? Base!.Version;

    public string Maker => Model?.Maker ?? Draft!.Maker!;

    public string Name => Model?.Name ?? Draft!.Name!;

    public bool Invented => Model?.Invented ?? Draft!.Invented;

    /// <summary>The document that the draft was made from; one with nothing in it for a new engine model.</summary>
    public JsonNode BaseDocument => Json(Base?.Specification ?? EmptySpecification.Document);

    public static JsonNode Json(EngineSpecification specification) =>
        JsonSerializer.SerializeToNode(specification, WorkshopJson.Options)!;

    public static async Task<Outcome<DraftBooks>> Read(WorkshopDbContext db, Guid id, Actor actor, CancellationToken ct)
    {
        var model = await db.EngineModels.AsNoTracking().SingleOrDefaultAsync(m => m.Id == id, ct);
        var draft = await db.SpecificationDrafts.SingleOrDefaultAsync(d => d.EngineModelId == id && d.PersonId == actor.PersonId, ct);
        if (model is null && draft is null)
        {
            return Problem.NotFound($"Engine model {id}");
        }

        var version = draft?.BasedOnVersion ?? model!.CurrentVersion;
        var from = await db.EngineModelVersions.AsNoTracking().SingleOrDefaultAsync(v => v.EngineModelId == id && v.Version == version, ct);
        var rowVersion = draft is null ? 0 : db.Entry(draft).Property<uint>(MappingExtensions.RowVersion).CurrentValue;
        return new DraftBooks(model, from, draft, rowVersion);
    }

    /// <summary>
    /// Changes the draft, beginning one where there is none: what comes out must have the form of a specification, and keeps those
    /// checks whose figures are what was compared.
    /// </summary>
    /// <param name="expected">The draft's version that the caller saw; 0 where there was none.</param>
    /// <param name="change">Makes the changed document; it may change the one that it is given.</param>
    public static async Task<Outcome<KeptDraft>> Change(
        WorkshopDbContext db, Guid id, uint expected, Func<JsonNode, DraftBooks, Outcome<JsonNode>> change, Actor actor, IClock clock,
        CancellationToken ct)
    {
        if (!(await Read(db, id, actor, ct)).TryGet(out var books, out var problem))
        {
            return problem;
        }

        if (books.Stale(expected) is { } stale)
        {
            return stale;
        }

        if (!change(Json(books.Specification), books).TryGet(out var changed, out problem)
            || !SpecificationDocument.Parse(JsonSerializer.SerializeToElement(changed)).TryGet(out var specification, out problem))
        {
            return problem;
        }

        var now = clock.GetCurrentInstant();
        var draft = books.Draft;
        if (draft is null)
        {
            draft = new SpecificationDraft
            {
                EngineModelId = id, PersonId = actor.PersonId, BasedOnVersion = books.BasedOnVersion, Specification = specification,
                StartedAt = now, ChangedAt = now,
            };
            db.Add(draft);
        }

        draft.Specification = specification;
        draft.ChangedAt = now;
        return await Save(db, draft, ct);
    }

    public static async Task<KeptDraft> Save(WorkshopDbContext db, SpecificationDraft draft, CancellationToken ct)
    {
        await db.SaveChangesAsync(ct);
        var (faults, toConfirm) = SpecificationDocument.Findings(draft.Specification);
        return new KeptDraft(
            draft.EngineModelId, draft.BasedOnVersion, faults, toConfirm,
            db.Entry(draft).Property<uint>(MappingExtensions.RowVersion).CurrentValue);
    }

    /// <summary>A document with the checks that still hold: those of the draft so far, and of the version that it was made from.</summary>
    public JsonNode WithChecks(JsonNode changed) =>
        SpecificationDocument.Parse(JsonSerializer.SerializeToElement(changed)).TryGet(out var specification, out _)
            ? CheckedFigures.Carry(Json(specification), Json(Specification), BaseDocument)
            : changed;

    public Problem? Stale(uint expected) => expected == RowVersion ? null : new Problem(ProblemKind.Stale, "draft-stale",
        Draft is null
            ? "The draft was published or discarded since you read it, in another window perhaps: read it again and repeat your change."
            : "The draft was changed since you read it, in another window perhaps: read it again and repeat your change.");
}
