using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Web.Data;
using Workshop.Web.Features.Intervals;

namespace Workshop.Web.Features.Drift;

/// <summary>
/// When an engine's valves are checked next: what Due says, by interval or drift, whichever first. A check that is overdue is one at the
/// last reading.
/// </summary>
/// <param name="On">The day.</param>
/// <param name="EngineAt">What the engine will have done then.</param>
internal sealed record NextCheck(LocalDate On, Distance EngineAt)
{
    /// <summary>For the rows of forecasts, which are written before those of Due: by the same rule, <see cref="DueSubject.NextCheck"/>.</summary>
    /// <param name="history">What decides what the motorcycle is due for.</param>
    /// <param name="engine">The engine in it.</param>
    /// <param name="driftWantsAt">Where the engine passes the manager's threshold, by the forecast that is about to be written.</param>
    public static NextCheck? Of(DueHistory history, EngineDrift engine, Distance? driftWantsAt)
    {
        var subject = history.Subject with { DriftWantsAt = driftWantsAt is { } at ? engine.Fitting!.MotorcycleDistanceAt(at) : null };
        return subject.NextCheck() is { } due ? Of(engine, due.ExpectedOn, due.On, due.At) : null;
    }

    /// <summary>Of an engine that is in a motorcycle, from what Due says of it.</summary>
    public static NextCheck Of(EngineDrift engine, DueLine line) => Of(engine, line.ExpectedOn, line.DueOn, line.DueAt);

    private static NextCheck Of(EngineDrift engine, LocalDate expectedOn, LocalDate? dueOn, Distance? dueAt)
    {
        // By the calendar it comes when the rate has brought it less far than the interval.
        var last = engine.Track!.Last;
        var byThen = engine.Rate!.DistanceOn(expectedOn, last);
        var at = dueAt is { } far && (far < byThen || dueOn is null) ? far : byThen;
        return new NextCheck(expectedOn, engine.Fitting!.EngineDistanceAt(at < last.Distance ? last.Distance : at));
    }

    /// <summary>The next check of each motorcycle as Due says it; one whose maker wants none has none.</summary>
    public static async Task<IReadOnlyDictionary<Guid, DueLine>> Lines(
        WorkshopDbContext db, IReadOnlyCollection<Guid> motorcycles, LocalDate today, CancellationToken ct)
    {
        var models = await (
            from fitting in db.EngineFittings.AsNoTracking()
            join engine in db.Engines on fitting.EngineId equals engine.Id
            where motorcycles.Contains(fitting.MotorcycleId) && fitting.RemovedOn == null
            select new { fitting.MotorcycleId, engine.EngineModelId }).ToDictionaryAsync(m => m.MotorcycleId, m => m.EngineModelId, ct);
        var used = models.Values.Distinct().ToList();
        var checks = (await (
            from model in db.EngineModels.AsNoTracking()
            join version in db.EngineModelVersions on new { model.Id, Version = model.CurrentVersion }
                equals new { Id = version.EngineModelId, version.Version }
            where used.Contains(model.Id)
            select version).ToListAsync(ct)).ToDictionary(
                v => v.EngineModelId, v => v.Specification.ServiceItems.Where(DueSubject.IsValveCheck).Select(i => i.Code).ToHashSet());
        var items = await db.DueItems.AsNoTracking().Where(d => motorcycles.Contains(d.MotorcycleId)).ToListAsync(ct);
        var next = items.Where(d => models.TryGetValue(d.MotorcycleId, out var model) && checks[model].Contains(d.ServiceItemCode))
            .GroupBy(d => d.MotorcycleId).Select(of => of.MinBy(d => d.ExpectedOn)!).ToList();
        return (await DueLine.Read(db, next, today, ct)).ToDictionary(l => l.MotorcycleId);
    }
}
