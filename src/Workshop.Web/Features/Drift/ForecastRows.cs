using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Web.Data;
using Workshop.Web.Features.Intervals;

namespace Workshop.Web.Features.Drift;

/// <summary>
/// Writes anew what is expected of the valves of an engine; called by every use case that adds a reading or changes what was
/// done, before <see cref="DueRows"/>, which reads what it wrote.
/// </summary>
internal static class ForecastRows
{
    public const int BatchSize = 200;

    public static Task Rewrite(WorkshopDbContext db, Guid engineId, IClock clock, CancellationToken ct) =>
        Rewrite(db, [engineId], clock, ct);

    /// <summary>
    /// Rewrites the rows of several engines. Saves what the use case has pending first, because it reads what stands in the
    /// database; two rewrites of one engine wait for each other.
    /// </summary>
    public static async Task Rewrite(
        WorkshopDbContext db, IReadOnlyCollection<Guid> engines, IClock clock, CancellationToken ct)
    {
        await db.SaveChangesAsync(ct);
        foreach (var batch in engines.Distinct().Order().Chunk(BatchSize))
        {
            await db.Database.ExecuteSqlAsync($"select 1 from engines where id = any ({batch}) order by id for no key update", ct);
            await RewriteBatch(db, batch, clock, ct);
            await db.SaveChangesAsync(ct);
        }
    }

    /// <summary>
    /// Rewrites the rows of a few engines at once; those of many are left to the worker, which refits their models and then commits
    /// forecasts, and what is due by them, batch by batch: nobody waits at a page for a thousand engines.
    /// </summary>
    public static Task RewriteSoon(
        WorkshopDbContext db, IReadOnlyCollection<Guid> engines, IClock clock, CancellationToken ct) =>
        engines.Count <= BatchSize ? Rewrite(db, engines, clock, ct) : Refits.RequestFor(db, engines, clock, ct);

    private static async Task RewriteBatch(WorkshopDbContext db, Guid[] engines, IClock clock, CancellationToken ct)
    {
        var standing = await db.ClearanceForecasts.Where(f => engines.Contains(f.EngineId))
            .ToDictionaryAsync(f => (f.EngineId, f.Valve, f.Lobe), ct);
        var outlooks = await db.EngineOutlooks.Where(o => engines.Contains(o.EngineId)).ToDictionaryAsync(o => o.EngineId, ct);
        var known = await EngineDrift.Load(db, engines, ct);
        var fits = await CurrentFits.Read(db, [.. known.Select(e => e.EngineModelId).Distinct()], ct);
        var histories = (await DueHistory.Load(db, [.. known.Select(e => e.Fitting).OfType<EngineFitting>().Select(f => f.MotorcycleId)], ct))
            .ToDictionary(h => h.MotorcycleId);
        var threshold = await db.WorkshopProfiles.AsNoTracking().Select(p => p.DriftThreshold).SingleAsync(ct);
        var now = clock.GetCurrentInstant();
        var written = new EngineRows[known.Count];
        Parallel.For(0, written.Length, new ParallelOptions { CancellationToken = ct }, i => written[i] = EngineRows.Of(
            known[i],
            fits.GetValueOrDefault(known[i].EngineModelId),
            known[i].Fitting is { } fitting ? histories.GetValueOrDefault(fitting.MotorcycleId) : null,
            threshold,
            now));

        foreach (var row in written.SelectMany(w => w.Forecasts))
        {
            Put(db, standing.Remove((row.EngineId, row.Valve, row.Lobe), out var earlier) ? earlier : null, row);
        }

        foreach (var row in written.Select(w => w.Outlook))
        {
            Put(db, outlooks.GetValueOrDefault(row.EngineId), row);
        }

        db.ClearanceForecasts.RemoveRange(standing.Values);
    }

    private static void Put<T>(WorkshopDbContext db, T? earlier, T row)
        where T : class
    {
        if (earlier is null)
        {
            db.Add(row);
        }
        else
        {
            db.Entry(earlier).CurrentValues.SetValues(row);
        }
    }
}

/// <summary>The rows of one engine.</summary>
internal sealed record EngineRows(EngineOutlook Outlook, IReadOnlyList<ClearanceForecast> Forecasts)
{
    public static EngineRows Of(EngineDrift engine, DriftFitVersion? version, DueHistory? history, double threshold, Instant now)
    {
        var forecast = version?.Fit is { } fit ? EngineForecast.Of(engine.Engine, fit) : null;
        var passes = forecast?.AnyPasses(threshold);
        var next = history is null ? null : NextCheck.Of(history, engine, passes);
        var rows = engine.Engine.Lobes.Select(l => RowOf(engine, l.Lobe, forecast, version, next, now)).ToList();
        return new EngineRows(
            new EngineOutlook
            {
                EngineId = engine.Engine.EngineId,
                ComputedAt = now,
                FitVersion = version?.Version,
                NextCheckAt = next?.EngineAt,
                NextCheckOn = next?.On,
                OutsideAtNextCheck = AnyOutside(null),
                IntakeOutsideAtNextCheck = AnyOutside(Side.Intake),
                ExhaustOutsideAtNextCheck = AnyOutside(Side.Exhaust),
                PassesThresholdAt = passes,
                PassesThresholdOn = engine.DayOf(passes),
                SoonestOn = rows.Min(r => r.LeavesLimitsOn),
                SoonestIntakeOn = rows.Where(r => r.Valve.Side == Side.Intake).Min(r => r.LeavesLimitsOn),
                SoonestExhaustOn = rows.Where(r => r.Valve.Side == Side.Exhaust).Min(r => r.LeavesLimitsOn),
            },
            rows);

        double? AnyOutside(Side? side) => next is null ? null : DriftFigures.Probability(forecast?.AnyOutsideBy(next.EngineAt, side));
    }

    private static ClearanceForecast RowOf(
        EngineDrift engine, LobeKey lobe, EngineForecast? forecast, DriftFitVersion? version, NextCheck? next, Instant now)
    {
        var known = forecast?.Find(lobe);
        return new ClearanceForecast
        {
            EngineId = engine.Engine.EngineId,
            Valve = lobe.Valve,
            Lobe = lobe.Lobe,
            ComputedAt = now,
            Readings = known?.Readings ?? 0,
            FitVersion = version?.Version,
            PresentAt = known?.From,
            PresentMm = DriftFigures.Mm(known?.PresentMm),
            PresentDeviationMm = DriftFigures.Mm(known?.PresentDeviationMm),
            DriftMmPer10000Km = DriftFigures.Drift(known?.DriftMm),
            DriftDeviation = DriftFigures.Drift(known?.DriftDeviationMm),
            LeavesLimitsAt = known?.Even,
            LeavesLimitsEarliestAt = known?.Earliest,
            LeavesLimitsLatestAt = known?.Latest,
            LeavesLimitsOn = engine.DayOf(known?.Even),
            LeavesLimitsEarliestOn = engine.DayOf(known?.Earliest),
            LeavesLimitsLatestOn = engine.DayOf(known?.Latest),
            OutsideAtNextCheck = next is null ? null : DriftFigures.Probability(forecast?.OutsideBy(lobe, next.EngineAt)),
            Reason = known is not null ? null : DriftWords.WhyNot(forecast?.WhyNot[lobe] ?? NoForecastReason.NoFit, version?.WhyNot),
        };
    }
}
