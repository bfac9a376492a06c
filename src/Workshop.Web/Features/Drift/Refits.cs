using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Drift;

/// <summary>Asks for refits of engine models; <see cref="DriftWorker"/> sees to them when no more has come for a while.</summary>
internal static class Refits
{
    /// <summary>Asks within the caller's transaction: a change that is not committed asks for nothing.</summary>
    public static async Task Request(
        WorkshopDbContext db, IReadOnlyCollection<Guid> engineModels, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        foreach (var model in engineModels.Distinct().Order())
        {
            await db.Database.ExecuteSqlAsync(
                $"""
                 insert into drift_refits (engine_model_id, requested_at, wanted_since, engines, engines_written)
                 values ({model}, {now}, {now}, 0, 0)
                 on conflict (engine_model_id) do update set
                   requested_at = excluded.requested_at,
                   wanted_since = coalesce(drift_refits.wanted_since, excluded.wanted_since)
                 """, ct);
        }
    }

    /// <summary>Asks for the model of an engine.</summary>
    public static async Task RequestFor(WorkshopDbContext db, IReadOnlyCollection<Guid> engines, IClock clock, CancellationToken ct) =>
        await Request(
            db, await db.Engines.Where(e => engines.Contains(e.Id)).Select(e => e.EngineModelId).Distinct().ToListAsync(ct), clock, ct);
}
