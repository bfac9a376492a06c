using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>A count that is not closed yet, its row locked: who counts, explains and closes come one after the other.</summary>
internal sealed record OpenCount(StockCount Count, StoragePlace Place)
{
    public static async Task<Outcome<OpenCount>> Locked(WorkshopDbContext db, Guid id, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from stock_counts where id = {id} for no key update", ct);
        var count = await db.StockCounts.SingleOrDefaultAsync(c => c.Id == id, ct);
        if (count is null)
        {
            return Problem.NotFound($"Count {id}");
        }

        return count.ClosedAt is null
            ? new OpenCount(count, await db.StoragePlaces.AsNoTracking().SingleAsync(p => p.Id == count.PlaceId, ct))
            : Problem.Conflict("count-closed", count.GivenUp
                ? "That count was given up; begin another one."
                : "That count is closed; its differences are booked. Begin another one.");
    }

    /// <summary>Of the next line; nobody else adds one meanwhile.</summary>
    public async Task<int> NextNumber(WorkshopDbContext db, CancellationToken ct) =>
        1 + (await db.StockCountLines.Where(l => l.CountId == Count.Id).MaxAsync(l => (int?)l.Number, ct) ?? 0);

    /// <summary>The lines of a count are rows of their own: its row is written in any case, so that its version covers them.</summary>
    public PropertyEntry<StockCount, uint> Changed(WorkshopDbContext db, uint? expected = null)
    {
        var row = db.Entry(Count);
        row.State = EntityState.Modified;
        var version = row.Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = expected ?? version.OriginalValue;
        return version;
    }
}
