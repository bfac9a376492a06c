using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>
/// Makes the person's draft the next version of the engine model, or a new engine model of its own: judged as a whole, with a
/// note of what changed. Visits that are booked keep the version that they were booked with.
/// </summary>
public static class PublishDraft
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        /// <summary>What changed and why.</summary>
        public string? Note { get; init; }

        /// <summary>The maker's document really says what looks unusual here.</summary>
        public bool ConfirmUnusual { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Note).IsGiven("what changed and why, for whoever reads the versions later").IsAtMost(Limits.Remark);
    }

    public static async Task<Outcome<EngineModelBooks.Made>> Handle(
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

        if (books.Draft is not { } draft
            || SpecificationDifferences.Between(books.BaseDocument, DraftBooks.Json(draft.Specification)).Count == 0)
        {
            return Problem.Conflict("nothing-changed", "The draft says what the current version says: there is nothing to publish.");
        }

        if (!SpecificationDocument.Judge(draft.Specification, request.ConfirmUnusual).TryGet(out var specification, out problem))
        {
            return problem;
        }

        db.Remove(draft);
        return books.Model is null
            ? await EngineModelBooks.Add(
                db, draft.EngineModelId, draft.Maker!, draft.Name!, draft.Invented, specification, request.Note, actor, clock, ct)
            : await EngineModelBooks.AddVersion(db, request.Id, draft.BasedOnVersion, specification, request.Note, actor, clock, ct);
    }
}
