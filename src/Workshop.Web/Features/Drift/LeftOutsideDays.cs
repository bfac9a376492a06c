using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Drift;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.Drift;

/// <summary>Motorcycles of which somebody left a valve outside its limits.</summary>
internal static class LeftOutsideDays
{
    /// <summary>The day on which it was last read so, by motorcycle; those without such a valve are left away.</summary>
    public static async Task<IReadOnlyDictionary<Guid, LocalDate>> Load(
        WorkshopDbContext db, IReadOnlyCollection<Guid> motorcycles, CancellationToken ct)
    {
        if (motorcycles.Count == 0)
        {
            return new Dictionary<Guid, LocalDate>();
        }

        var engines = await db.EngineFittings.AsNoTracking().Where(f => motorcycles.Contains(f.MotorcycleId) && f.RemovedOn == null)
            .Select(f => f.EngineId).ToListAsync(ct);
        var time = await WorkshopTimes.Read(db, ct);
        return (await EngineDrift.Load(db, engines, ct))
            .Select(e => (e.Fitting!.MotorcycleId, Read: LeftOutside.LatestOf(e.Engine)))
            .Where(e => e.Read is not null)
            .ToDictionary(e => e.MotorcycleId, e => time.DayOf(e.Read!.MeasuredAt));
    }
}
