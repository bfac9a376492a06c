using Microsoft.EntityFrameworkCore;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Shims;

/// <summary>Which shim lies in each valve of some engines, where that is known.</summary>
internal static class ShimHistories
{
    public static async Task<IReadOnlyDictionary<Guid, IReadOnlyDictionary<ValveKey, ShimThickness>>> Read(
        WorkshopDbContext db, IReadOnlyCollection<Guid> engines, CancellationToken ct)
    {
        var shims = (await db.ShimObservations.AsNoTracking().Where(s => engines.Contains(s.EngineId)).ToListAsync(ct)).ToLookup(s => s.EngineId);
        var events = (await db.ValveEvents.AsNoTracking().Where(e => engines.Contains(e.EngineId)).ToListAsync(ct)).ToLookup(e => e.EngineId);
        return engines.ToDictionary(id => id, id => MeasuredValves.ShimsBefore([.. shims[id]], [.. events[id]]));
    }
}
