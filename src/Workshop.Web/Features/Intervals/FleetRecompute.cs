using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Intervals;

/// <summary>
/// Works out what the fleet rides and writes anew what every motorcycle is due for, batch by batch: each is committed with how far
/// it is, so that whoever takes it up after a kill goes on where it stood.
/// </summary>
internal sealed class FleetRecompute(WorkshopDbContext db, IClock clock, Guid id)
{
    /// <summary>Begins or goes on, to the end.</summary>
    public async Task Run(CancellationToken ct)
    {
        var job = await db.DueRecomputes.SingleAsync(r => r.Id == id, ct);
        if (job.FleetRidingVersion is null)
        {
            job.StartedAt ??= clock.GetCurrentInstant();
            job.Motorcycles = await db.Motorcycles.CountAsync(ct);
            job.FleetRidingVersion = await FleetRidings.Renew(db, clock, ct);
            await db.SaveChangesAsync(ct);
        }

        while (await Batch(job.LastMotorcycle, ct) is { Length: > 0 } batch)
        {
            await using var transaction = await db.Database.BeginTransactionAsync(ct);
            await DueRows.Rewrite(db, batch, clock, ct);
            job.LastMotorcycle = batch[^1];
            job.Written += batch.Length;
            await db.SaveChangesAsync(ct);
            await transaction.CommitAsync(ct);
        }

        job.FinishedAt = clock.GetCurrentInstant();
        await db.SaveChangesAsync(ct);
    }

    /// <summary>In the order of the database, which is not that of .NET.</summary>
    private Task<Guid[]> Batch(Guid? after, CancellationToken ct)
    {
        var motorcycles = db.Motorcycles.AsNoTracking();
        return (after is { } last ? motorcycles.Where(m => m.Id > last) : motorcycles)
            .OrderBy(m => m.Id).Select(m => m.Id).Take(DueRows.BatchSize).ToArrayAsync(ct);
    }
}
