using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Stores;
using Workshop.Web.Features.Stores;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// What the stores show of their own: lots, one of them expired, numbers on packages, one count that is closed with a difference and
/// one that is still open. Numbers on packages begin with 29, which GS1 leaves to each shop's own use, so they are nobody's.
/// </summary>
internal sealed class DemoStores(WorkshopDbContext db, DemoStaff staff, DemoWorkshop workshop)
{
    private const string Storekeeper = "greta";
    private const int CountedDaysAgo = 9;

    public async Task Write(Instant now, CancellationToken ct)
    {
        var today = staff.Time.DayOf(now);
        var places = await db.StoragePlaces.AsNoTracking().ToDictionaryAsync(p => p.Name, p => p.Code, ct);
        foreach (var lot in workshop.Lots.OrderByDescending(l => l.ReceivedDaysAgo))
        {
            staff.SetClock(today.PlusDays(-lot.ReceivedDaysAgo), 9);
            await staff.Do(Storekeeper, new ReceiveGoods.Request
            {
                PartCode = lot.Part, PlaceCode = places[lot.Place], Quantity = lot.Quantity, LotCode = lot.Lot, ExpiresOn = today.PlusDays(lot.ExpiresInDays),
            }, ReceiveGoods.Handle, ct);
        }

        foreach (var count in workshop.Counts)
        {
            staff.SetClock(today.PlusDays(count.Closed ? -CountedDaysAgo : 0), 10);
            await Count(count, places[count.Place], ct);
        }

        staff.Clock.Now = now;
    }

    private async Task Count(DemoCount demo, string place, CancellationToken ct)
    {
        var count = (await staff.Do(Storekeeper, new StartCount.Request { PlaceCode = place }, StartCount.Handle, ct)).Id;
        foreach (var part in demo.Parts)
        {
            var there = await db.StockBalances.AsNoTracking()
                .Where(b => b.LotId == null && db.Parts.Any(p => p.Id == b.PartId && p.Code == part.Part) && db.StoragePlaces.Any(p => p.Id == b.PlaceId && p.Code == place))
                .SumAsync(b => b.OnHand, ct);
            await staff.Do(Storekeeper, new CountParts.Request { CountId = count, Code = part.Part, Counted = there - part.Fewer }, CountParts.Handle, ct);
        }

        if (!demo.Closed)
        {
            return;
        }

        foreach (var line in await db.StockCountLines.AsNoTracking().Where(l => l.CountId == count && l.Counted != l.Expected).ToListAsync(ct))
        {
            await staff.Do(Storekeeper, new ExplainDifference.Request
            {
                CountId = count, LineId = line.Id, Reason = CountDifferenceReason.TakenWithoutIssue, Remark = demo.Remark,
            }, ExplainDifference.Handle, ct);
        }

        var version = await db.StockCounts.Where(c => c.Id == count).Select(c => EF.Property<uint>(c, MappingExtensions.RowVersion)).SingleAsync(ct);
        await staff.Do(Storekeeper, new CloseCount.Request { CountId = count, RowVersion = version }, CloseCount.Handle, ct);
    }
}
