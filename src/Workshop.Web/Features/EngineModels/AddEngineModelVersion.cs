using System.Text.Json;
using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

/// <summary>
/// Adds a version to an engine model. New job cards are booked with it; those that are open keep theirs. What is due and what
/// is expected of its engines is written anew, since intervals and limits may have changed.
/// </summary>
public static class AddEngineModelVersion
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        /// <summary>The version that the new one was made from.</summary>
        public int? BasedOnVersion { get; init; }

        /// <summary>In the form in which GET /api/v1/engine-models/{id} answers one.</summary>
        public JsonElement? Specification { get; init; }

        /// <summary>The maker's document really says what looks unusual here.</summary>
        public bool ConfirmUnusual { get; init; }
    }

    public sealed record Answer(Guid Id, int Version);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.BasedOnVersion).IsGiven("the number of the version that you changed");
            RuleFor(r => r.Specification).NotNull().WithMessage("{PropertyName} is empty: give the engine maker's specification.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!SpecificationDocument.Read(request.Specification!.Value, request.ConfirmUnusual).TryGet(out var specification, out var problem))
        {
            return problem;
        }

        await db.Database.ExecuteSqlAsync($"select 1 from engine_models where id = {request.Id} for update", ct);
        var model = await db.EngineModels.SingleOrDefaultAsync(m => m.Id == request.Id, ct);
        if (model is null)
        {
            return Problem.NotFound($"Engine model {request.Id}");
        }

        if (model.CurrentVersion != request.BasedOnVersion)
        {
            return new Problem(ProblemKind.Stale, "version-stale",
                $"basedOnVersion is {request.BasedOnVersion}, but version {model.CurrentVersion} is the current one: read it and repeat your change.");
        }

        var before = await db.EngineModelVersions.AsNoTracking()
            .Where(v => v.EngineModelId == model.Id && v.Version == model.CurrentVersion).Select(v => v.Specification).SingleAsync(ct);
        if (ValvesLost(before, specification) is { Count: > 0 } lost)
        {
            return Problem.Impossible("valves-differ", $"{SpecificationDocument.Field}.valves",
                $"{SpecificationDocument.Field}.valves lacks {string.Join(", ", lost)}, which version {model.CurrentVersion} has: an engine of other valves is another engine model.");
        }

        model.CurrentVersion++;
        db.EngineModelVersions.Add(new EngineModelVersion
        {
            Id = NewId.At(clock), EngineModelId = model.Id, Version = model.CurrentVersion, Specification = specification,
            CreatedBy = actor.PersonId, CreatedAt = clock.GetCurrentInstant(),
        });
        await db.SaveChangesAsync(ct);
        await RewriteRows(db, model.Id, clock, ct);
        return new Answer(model.Id, model.CurrentVersion);
    }

    /// <summary>Readings belong to lobes: what was measured once must keep its place.</summary>
    private static List<LobeKey> ValvesLost(EngineSpecification before, EngineSpecification after) =>
        [.. LobesOf(before).Except(LobesOf(after)).Order()];

    private static IEnumerable<LobeKey> LobesOf(EngineSpecification specification) =>
        specification.Valves.SelectMany(v => Enumerable.Range(1, v.Lobes).Select(lobe => new LobeKey(v.Key, lobe)));

    private static async Task RewriteRows(WorkshopDbContext db, Guid engineModelId, IClock clock, CancellationToken ct)
    {
        var fitted = await (
            from engine in db.Engines
            join fitting in db.EngineFittings on engine.Id equals fitting.EngineId
            where engine.EngineModelId == engineModelId && fitting.RemovedOn == null
            select new { fitting.MotorcycleId, EngineId = engine.Id }).ToListAsync(ct);
        await ForecastRows.Rewrite(db, [.. fitted.Select(f => f.EngineId)], clock, ct);
        await DueRows.Rewrite(db, [.. fitted.Select(f => f.MotorcycleId)], clock, ct);
        await Refits.Request(db, [engineModelId], clock, ct);
    }
}
