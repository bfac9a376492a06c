using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;

namespace Workshop.Web.Features.EngineModels;

/// <summary>
/// The one way in which a specification that has been judged becomes a version, sent as a whole or published from a draft. What
/// is due and what is expected of its engines is written anew; a refit is asked for where a fit rests on what changed.
/// </summary>
public static class EngineModelBooks
{
    public sealed record Made(Guid Id, int Version);

    public static async Task<Outcome<Made>> Add(
        WorkshopDbContext db, Guid id, string maker, string name, bool invented, EngineSpecification specification, string? note,
        Actor actor, IClock clock, CancellationToken ct)
    {
        if (await db.EngineModels.AnyAsync(m => m.Maker == maker && m.Name == name, ct))
        {
            return Problem.Conflict("engine-model-exists",
                $"name is \"{name}\": {maker} has an engine model of that name already; add a version to it.");
        }

        var model = new EngineModel { Id = id, Maker = maker, Name = name, Invented = invented, CurrentVersion = 1 };
        db.EngineModels.Add(model);
        db.EngineModelVersions.Add(VersionOf(model, specification, note, actor, clock));
        await db.SaveChangesAsync(ct);
        return new Made(model.Id, model.CurrentVersion);
    }

    public static async Task<Outcome<Made>> AddVersion(
        WorkshopDbContext db, Guid id, int basedOnVersion, EngineSpecification specification, string? note,
        Actor actor, IClock clock, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from engine_models where id = {id} for update", ct);
        var model = await db.EngineModels.SingleOrDefaultAsync(m => m.Id == id, ct);
        if (model is null)
        {
            return Problem.NotFound($"Engine model {id}");
        }

        if (model.CurrentVersion != basedOnVersion)
        {
            return new Problem(ProblemKind.Stale, "version-stale",
                $"basedOnVersion is {basedOnVersion}, but version {model.CurrentVersion} is the current one: read it and repeat your change.");
        }

        var before = await db.EngineModelVersions.AsNoTracking()
            .Where(v => v.EngineModelId == model.Id && v.Version == model.CurrentVersion).Select(v => v.Specification).SingleAsync(ct);
        if (ValvesLost(before, specification) is { Count: > 0 } lost)
        {
            return Problem.Impossible("valves-differ", $"{SpecificationDocument.Field}.valves",
                $"{SpecificationDocument.Field}.valves lacks {string.Join(", ", lost)}, which version {model.CurrentVersion} has: an engine of other valves is another engine model.");
        }

        model.CurrentVersion++;
        db.EngineModelVersions.Add(VersionOf(model, specification, note, actor, clock));
        await db.SaveChangesAsync(ct);
        await RewriteRows(db, model.Id, FitBasis.ForecastsDiffer(before, specification), clock, ct);
        if (FitBasis.Differs(before, specification))
        {
            await Refits.Request(db, [model.Id], clock, ct);
        }

        return new Made(model.Id, model.CurrentVersion);
    }

    private static EngineModelVersion VersionOf(
        EngineModel model, EngineSpecification specification, string? note, Actor actor, IClock clock) => new()
    {
        Id = NewId.At(clock),
        EngineModelId = model.Id,
        Version = model.CurrentVersion,
        Specification = specification,
        Note = string.IsNullOrWhiteSpace(note) ? null : note.Trim(),
        CreatedBy = actor.PersonId,
        CreatedAt = clock.GetCurrentInstant(),
    };

    /// <summary>Readings belong to lobes: what was measured once must keep its place.</summary>
    private static List<LobeKey> ValvesLost(EngineSpecification before, EngineSpecification after) =>
        [.. LobesOf(before).Except(LobesOf(after)).Order()];

    private static IEnumerable<LobeKey> LobesOf(EngineSpecification specification) =>
        specification.Valves.SelectMany(v => Enumerable.Range(1, v.Lobes).Select(lobe => new LobeKey(v.Key, lobe)));

    private static async Task RewriteRows(
        WorkshopDbContext db, Guid engineModelId, bool forecasts, IClock clock, CancellationToken ct)
    {
        var fitted = await (
            from engine in db.Engines
            join fitting in db.EngineFittings on engine.Id equals fitting.EngineId
            where engine.EngineModelId == engineModelId && fitting.RemovedOn == null
            select new { fitting.MotorcycleId, EngineId = engine.Id }).ToListAsync(ct);
        if (forecasts)
        {
            await ForecastRows.RewriteSoon(db, [.. fitted.Select(f => f.EngineId)], clock, ct);
        }

        await DueRows.Rewrite(db, [.. fitted.Select(f => f.MotorcycleId)], clock, ct);
    }
}
