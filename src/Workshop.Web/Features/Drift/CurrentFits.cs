using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Drift;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Drift;

/// <summary>The fits that count: of each engine model the last.</summary>
internal static class CurrentFits
{
    /// <summary>By engine model; a model that was never fitted has none.</summary>
    public static async Task<IReadOnlyDictionary<Guid, DriftFitVersion>> Read(
        WorkshopDbContext db, IReadOnlyCollection<Guid> engineModels, CancellationToken ct) =>
        await db.DriftFits.AsNoTracking()
            .Where(f => engineModels.Contains(f.EngineModelId)
                && !db.DriftFits.Any(later => later.EngineModelId == f.EngineModelId && later.Version > f.Version))
            .ToDictionaryAsync(f => f.EngineModelId, ct);

    public static Task<DriftFitVersion?> Read(WorkshopDbContext db, Guid engineModel, CancellationToken ct) =>
        db.DriftFits.AsNoTracking().Where(f => f.EngineModelId == engineModel).OrderByDescending(f => f.Version)
            .FirstOrDefaultAsync(ct);
}
