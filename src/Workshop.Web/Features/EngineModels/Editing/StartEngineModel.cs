using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>
/// Begins a draft of an engine model that is not in the books yet, from nothing or from the figures of another one; nobody has
/// checked those for this engine. It is in the books when the draft is published.
/// </summary>
public static class StartEngineModel
{
    public sealed record Request
    {
        public string? Maker { get; init; }

        public string? Name { get; init; }

        /// <summary>Belongs to no real engine.</summary>
        public bool Invented { get; init; }

        /// <summary>The engine model whose figures it begins with.</summary>
        public Guid? LikeId { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Maker).IsGiven("who makes the engine").IsAtMost(Limits.Name);
            RuleFor(r => r.Name).IsGiven("the engine model's name").IsAtMost(Limits.Name);
        }
    }

    public static async Task<Outcome<KeptDraft>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var (maker, name) = (request.Maker!.Trim(), request.Name!.Trim());
        if (await db.EngineModels.AnyAsync(m => m.Maker == maker && m.Name == name, ct))
        {
            return Problem.Conflict("engine-model-exists", $"name is \"{name}\": {maker} has an engine model of that name already; edit that one.");
        }

        var like = request.LikeId is not { } id ? EmptySpecification.Document : await (
            from model in db.EngineModels.AsNoTracking()
            join version in db.EngineModelVersions on new { model.Id, Version = model.CurrentVersion } equals new { Id = version.EngineModelId, version.Version }
            where model.Id == id
            select version.Specification).SingleOrDefaultAsync(ct);
        if (like is null)
        {
            return Problem.Impossible("like-unknown", "likeId", $"likeId is {request.LikeId}: no engine model has it.");
        }

        var now = clock.GetCurrentInstant();
        var asNobodyChecked = CheckedFigures.Carry(DraftBooks.Json(like));
        var draft = new SpecificationDraft
        {
            EngineModelId = NewId.At(clock),
            PersonId = actor.PersonId,
            BasedOnVersion = 0,
            Maker = maker,
            Name = name,
            Invented = request.Invented,
            Specification = System.Text.Json.JsonSerializer.Deserialize<EngineSpecification>(asNobodyChecked, WorkshopJson.Options)!,
            StartedAt = now,
            ChangedAt = now,
        };
        db.Add(draft);
        return await DraftBooks.Save(db, draft, ct);
    }
}
