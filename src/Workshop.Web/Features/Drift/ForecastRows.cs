using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Drift;
using Workshop.Domain.Measures;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Drift;

/// <summary>Writes anew what is expected of the valves of an engine; called by every use case that adds a reading.</summary>
internal static class ForecastRows
{
    private const int BatchSize = 500;

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

    private static async Task RewriteBatch(WorkshopDbContext db, Guid[] engines, IClock clock, CancellationToken ct)
    {
        var standing = await db.ClearanceForecasts.Where(f => engines.Contains(f.EngineId))
            .ToDictionaryAsync(f => (f.EngineId, f.Valve, f.Lobe), ct);
        var now = clock.GetCurrentInstant();
        foreach (var engine in await EngineDrift.Load(db, engines, ct))
        {
            foreach (var row in engine.Lobes().Select(lobe => RowOf(engine, lobe, now)))
            {
                if (standing.Remove((row.EngineId, row.Valve, row.Lobe), out var earlier))
                {
                    db.Entry(earlier).CurrentValues.SetValues(row);
                }
                else
                {
                    db.ClearanceForecasts.Add(row);
                }
            }
        }

        db.ClearanceForecasts.RemoveRange(standing.Values);
    }

    private static ClearanceForecast RowOf(EngineDrift engine, LobeDrift lobe, Instant now)
    {
        var estimate = lobe.Estimate;
        return new ClearanceForecast
        {
            EngineId = engine.EngineId,
            Valve = lobe.History.Lobe.Valve,
            Lobe = lobe.History.Lobe.Lobe,
            ComputedAt = now,
            Readings = estimate.Readings,
            PresentMm = DriftFigures.Mm(estimate.PresentMm),
            DriftMmPer10000Km = DriftFigures.Drift(estimate.DriftMm),
            DriftStandardError = DriftFigures.Drift(estimate.Drift?.StandardError),
            LeavesLimitsAt = estimate.Reaches?.At,
            LeavesLimitsEarliestAt = estimate.Reaches?.Earliest,
            LeavesLimitsOn = engine.DayOf(estimate.Reaches?.At),
            Reason = estimate.ReasonSentence,
        };
    }
}
