using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Motorcycles;
using Workshop.Web.Data;
using Workshop.Web.Features.Motorcycles;

namespace Workshop.Web.Features.Intervals;

/// <summary>
/// Writes anew what is due of a motorcycle: from the current version of its engine model, what was done, and the odometer
/// readings that stand. Called by every use case that changes one of them.
/// </summary>
internal static class DueRows
{
    public const int BatchSize = 500;

    public static Task Rewrite(WorkshopDbContext db, Guid motorcycleId, IClock clock, CancellationToken ct) =>
        Rewrite(db, [motorcycleId], clock, ct);

    /// <summary>
    /// Rewrites the rows of these motorcycles. Saves what the use case has pending first, because it reads what stands in the
    /// database; two rewrites of one motorcycle wait for each other.
    /// </summary>
    public static async Task Rewrite(
        WorkshopDbContext db, IReadOnlyCollection<Guid> motorcycles, IClock clock, CancellationToken ct)
    {
        await db.SaveChangesAsync(ct);
        foreach (var batch in motorcycles.Order().Chunk(BatchSize))
        {
            await MotorcycleLock.Take(db, batch, ct);
            await RewriteBatch(db, batch, clock, ct);
            await db.SaveChangesAsync(ct);
        }
    }

    /// <summary>Rewrites the rows of the whole fleet, for a start from nothing; forgets what it has written as it goes.</summary>
    public static async Task RewriteAll(WorkshopDbContext db, IClock clock, CancellationToken ct)
    {
        var fleet = await db.Motorcycles.AsNoTracking().Select(m => m.Id).ToListAsync(ct);
        foreach (var batch in fleet.Order().Chunk(BatchSize))
        {
            await Rewrite(db, batch, clock, ct);
            db.ChangeTracker.Clear();
        }
    }

    private static async Task RewriteBatch(
        WorkshopDbContext db, IReadOnlyList<Guid> motorcycles, IClock clock, CancellationToken ct)
    {
        var histories = await DueHistory.Load(db, motorcycles, ct);
        var standing = await db.DueItems.Where(d => motorcycles.Contains(d.MotorcycleId)).ToDictionaryAsync(
            d => (d.MotorcycleId, d.ServiceItemCode), ct);
        var now = clock.GetCurrentInstant();
        foreach (var row in histories.SelectMany(history => RowsOf(history, now)))
        {
            if (standing.Remove((row.MotorcycleId, row.ServiceItemCode), out var earlier))
            {
                db.Entry(earlier).CurrentValues.SetValues(row);
            }
            else
            {
                db.DueItems.Add(row);
            }
        }

        db.DueItems.RemoveRange(standing.Values);
    }

    private static IEnumerable<DueItem> RowsOf(DueHistory history, Instant now)
    {
        var rate = RidingRate.Of(history.Track);
        foreach (var item in history.Items)
        {
            OdometerPoint? lastDone = history.Done.TryGetValue(item.Code, out var done) ? done : null;
            if (item.Interval is { } interval
                && NextDue.Of(interval, history.EngineStart, lastDone, history.Track, rate, history.ForecastOf(item)) is { } due)
            {
                yield return new DueItem
                {
                    MotorcycleId = history.MotorcycleId,
                    ServiceItemCode = item.Code,
                    Name = item.Name,
                    DueOn = due.On,
                    DueAt = due.At,
                    ExpectedOn = due.ExpectedOn,
                    EarliestOn = due.Span?.First,
                    LatestOn = due.IsOpenEnded ? null : due.Span?.Last,
                    RateBasis = due.At is null ? null : rate.Basis,
                    LastDoneOn = lastDone?.On,
                    LastDoneAt = lastDone?.Distance,
                    ByForecast = due.ByForecast,
                    ComputedAt = now,
                };
            }
        }
    }
}
