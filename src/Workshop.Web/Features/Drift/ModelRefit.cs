using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Statistics;
using Workshop.Web.Data;
using Workshop.Web.Features.Intervals;

namespace Workshop.Web.Features.Drift;

/// <summary>
/// Refits one engine model and writes the forecasts of its engines anew, batch by batch: each is committed with how far it is, so
/// that whoever takes it up after a kill goes on where it stood.
/// </summary>
internal sealed class ModelRefit(WorkshopDbContext db, IClock clock, Guid engineModelId)
{
    /// <summary>A pool is worked out anew when the kind has so many more readings.</summary>
    private const double PoolAges = 1.1;

    /// <summary>A lobe's forecast says a sentence before it, and both have room in its column.</summary>
    private const int LongestReason = 300;

    /// <summary>Engines are read in batches of this size for a fit.</summary>
    private const int LoadSize = 500;

    /// <summary>Begins or goes on, to the end.</summary>
    public async Task Run(CancellationToken ct)
    {
        var refit = await db.DriftRefits.SingleAsync(r => r.EngineModelId == engineModelId, ct);
        if (!refit.UnderWay)
        {
            refit.StartedAt = clock.GetCurrentInstant();
            (refit.FinishedAt, refit.FitVersion, refit.LastEngine, refit.EnginesWritten) = (null, null, null, 0);

            // What comes from here on asks anew; what came before is in what is read now.
            refit.WantedSince = null;
            await db.SaveChangesAsync(ct);
        }

        var ids = await db.Engines.AsNoTracking().Where(e => e.EngineModelId == engineModelId).Select(e => e.Id).ToListAsync(ct);
        if (refit.FitVersion is null)
        {
            refit.Engines = ids.Count;
            await db.SaveChangesAsync(ct);
            await Fit(refit, ids, ct);
        }

        await WriteForecasts(refit, ids, ct);
        refit.FinishedAt = clock.GetCurrentInstant();
        await db.SaveChangesAsync(ct);
    }

    private async Task Fit(DriftRefit refit, List<Guid> ids, CancellationToken ct)
    {
        var engines = await Engines(ids, ct);
        var fit = DriftModel.Borrows(engines) ? null : DriftModel.Fit(engines, null, ct);
        if (fit is null or { HasValue: false })
        {
            fit = DriftModel.Fit(engines, await Pool(engines, ct), ct);
        }

        var before = await db.DriftFits.Where(f => f.EngineModelId == engineModelId).MaxAsync(f => (int?)f.Version, ct) ?? 0;
        db.DriftFits.Add(new DriftFitVersion
        {
            EngineModelId = engineModelId,
            Version = before + 1,
            ComputedAt = clock.GetCurrentInstant(),
            Readings = engines.Sum(ReadingsOf),
            LogLikelihood = fit.HasValue ? fit.Value.LogLikelihood : null,
            Fit = fit.HasValue ? fit.Value : null,
            WhyNot = fit.HasValue ? null : fit.WhyNot.Explanation[..Math.Min(LongestReason, fit.WhyNot.Explanation.Length)],
        });
        refit.FitVersion = before + 1;
        await db.SaveChangesAsync(ct);
    }

    private async Task WriteForecasts(DriftRefit refit, List<Guid> ids, CancellationToken ct)
    {
        foreach (var batch in ids.Order().Where(id => refit.LastEngine is null || id.CompareTo(refit.LastEngine.Value) > 0).Chunk(ForecastRows.BatchSize))
        {
            // A seeder holds one transaction around everything.
            await using var transaction = db.Database.CurrentTransaction is null ? await db.Database.BeginTransactionAsync(ct) : null;
            await ForecastRows.Rewrite(db, batch, clock, ct);
            await DueRows.Rewrite(db, await MotorcyclesOf(batch, ct), clock, ct);
            refit.LastEngine = batch[^1];
            refit.EnginesWritten += batch.Length;
            await db.SaveChangesAsync(ct);
            if (transaction is not null)
            {
                await transaction.CommitAsync(ct);
            }

            Forget(refit);
        }
    }

    private Task<List<Guid>> MotorcyclesOf(Guid[] engines, CancellationToken ct) => db.EngineFittings.AsNoTracking()
        .Where(f => engines.Contains(f.EngineId) && f.RemovedOn == null).Select(f => f.MotorcycleId).Distinct().ToListAsync(ct);

    /// <summary>
    /// What all models of the kind show together; nothing where this is the only one that was read. When it is new, those that lean
    /// on it are asked for.
    /// </summary>
    private async Task<DriftPool?> Pool(List<DriftEngine> own, CancellationToken ct)
    {
        if (own.Count == 0)
        {
            return null;
        }

        var kind = own[0].Specification.ValveTrain;
        var models = await ModelsOf(kind, ct);
        var readings = await db.ClearanceReadings.CountAsync(
            r => db.Engines.Any(e => e.Id == r.EngineId && models.Contains(e.EngineModelId)), ct);
        var last = await db.DriftPools.AsNoTracking().Where(p => p.Kind == kind).OrderByDescending(p => p.Version).FirstOrDefaultAsync(ct);
        if (last is not null && readings <= last.Readings * PoolAges)
        {
            return last.Pool;
        }

        var pool = await WorkOut(kind, models, ct);
        db.DriftPools.Add(new DriftPoolVersion
        {
            Kind = kind, Version = (last?.Version ?? 0) + 1, ComputedAt = clock.GetCurrentInstant(), Readings = readings, Pool = pool,
        });
        await db.SaveChangesAsync(ct);
        await Refits.Request(db, await Borrowers(models, ct), clock, ct);
        return pool;
    }

    private async Task<DriftPool?> WorkOut(ValveTrainKind kind, List<Guid> models, CancellationToken ct)
    {
        var all = new List<DriftEngine>();
        var fits = new List<DriftFit>();
        foreach (var model in models)
        {
            var ids = await db.Engines.AsNoTracking().Where(e => e.EngineModelId == model).Select(e => e.Id).ToListAsync(ct);
            var engines = await Engines(ids, ct);
            if (engines.Sum(ReadingsOf) == 0)
            {
                continue;
            }

            all.AddRange(engines);
            var fit = DriftModel.Borrows(engines) ? null : DriftModel.Fit(engines, null, ct);
            if (fit is { HasValue: true })
            {
                fits.Add(fit.Value);
            }
        }

        var others = all.Select(e => e.EngineId).ToHashSet();
        others.ExceptWith(await db.Engines.Where(e => e.EngineModelId == engineModelId).Select(e => e.Id).ToListAsync(ct));
        var together = others.Count == 0 ? null : DriftModel.FitTogether(all, ct);
        return together is { HasValue: true } ? DriftPool.Of(kind, together.Value, fits) : null;
    }

    private async Task<List<Guid>> ModelsOf(ValveTrainKind kind, CancellationToken ct)
    {
        var current = await (
            from model in db.EngineModels.AsNoTracking()
            join version in db.EngineModelVersions on new { model.Id, Version = model.CurrentVersion }
                equals new { Id = version.EngineModelId, version.Version }
            select new { model.Id, version.Specification }).ToListAsync(ct);
        return [.. current.Where(c => c.Specification.ValveTrain == kind).Select(c => c.Id).Order()];
    }

    private async Task<List<Guid>> Borrowers(List<Guid> models, CancellationToken ct)
    {
        var fits = await CurrentFits.Read(db, models, ct);
        return [.. fits.Values
            .Where(f => f.EngineModelId != engineModelId && f.Fit?.Source != FitSource.OwnReadings)
            .Select(f => f.EngineModelId)];
    }

    private async Task<List<DriftEngine>> Engines(List<Guid> ids, CancellationToken ct)
    {
        var engines = new List<DriftEngine>(ids.Count);
        foreach (var batch in ids.Order().Chunk(LoadSize))
        {
            engines.AddRange((await EngineDrift.Load(db, batch, ct)).Select(e => e.Engine));
        }

        return engines;
    }

    /// <summary>Forgets the rows written so far, so that a large fleet costs no memory; the refit itself stays.</summary>
    private void Forget(DriftRefit refit)
    {
        db.ChangeTracker.Clear();
        db.DriftRefits.Attach(refit);
    }

    private static int ReadingsOf(DriftEngine engine) => engine.Lobes.Sum(l => l.Legs.Sum(leg => leg.Readings.Count));
}
