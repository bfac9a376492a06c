using Microsoft.EntityFrameworkCore;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>
/// Holds a motorcycle until the transaction ends, so that two entries to its history judge each other instead of passing each
/// other. Rows that point at the motorcycle may still be added meanwhile, and its version stays.
/// </summary>
internal static class MotorcycleLock
{
    public static Task Take(WorkshopDbContext db, Guid motorcycleId, CancellationToken ct) => Take(db, [motorcycleId], ct);

    /// <summary>Several at once, always in order of id, so that two who want the same ones do not block each other for good.</summary>
    public static Task Take(WorkshopDbContext db, Guid[] motorcycles, CancellationToken ct) =>
        db.Database.ExecuteSqlAsync($"select 1 from motorcycles where id = any ({motorcycles}) order by id for no key update", ct);
}
