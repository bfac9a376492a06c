using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Orders;

/// <summary>What is there of a part.</summary>
/// <param name="Lots">One row for each last day, past ones too.</param>
/// <param name="Today">What ends before it is not counted.</param>
internal sealed record PartOnHand(IReadOnlyList<LotThere> Lots, LocalDate Today)
{
    /// <summary>Fit to be used, whoever has reserved it.</summary>
    public decimal OnHand => Lots.Where(l => l.LastsUntil(Today)).Sum(l => l.OnHand);

    /// <summary>Of all that lies there.</summary>
    public decimal Reserved => Lots.Sum(l => l.OnHand - l.Free + l.Gone);

    /// <summary>There, but beyond its last day; not counted.</summary>
    public decimal Expired => Lots.Where(l => !l.LastsUntil(Today)).Sum(l => l.OnHand);
}

/// <summary>Reads what is there and what comes of parts that are no shims.</summary>
internal static class PartsOnHand
{
    /// <summary>By part, also of those of which nothing is there.</summary>
    public static async Task<IReadOnlyDictionary<Guid, PartOnHand>> Read(
        WorkshopDbContext db, IReadOnlyCollection<Guid> parts, LocalDate today, CancellationToken ct)
    {
        var lots = (await (
            from balance in db.StockBalances.AsNoTracking()
            where parts.Contains(balance.PartId) && balance.Thickness == null && balance.Condition == StockCondition.New
            join found in db.StockLots on balance.LotId equals found.Id into found
            from lot in found.DefaultIfEmpty()
            group balance by new { balance.PartId, ExpiresOn = lot == null ? null : lot.ExpiresOn } into there
            select new
            {
                there.Key,
                OnHand = there.Sum(b => b.OnHand),
                Free = there.Sum(b => b.OnHand > b.Reserved ? b.OnHand - b.Reserved : 0),
                Gone = there.Sum(b => b.OnHand > b.Reserved ? 0 : b.Reserved - b.OnHand),
            }).ToListAsync(ct)).ToLookup(t => t.Key.PartId, t => new LotThere(t.Key.ExpiresOn, t.OnHand, t.Free, t.Gone));
        return parts.Distinct().ToDictionary(id => id, id => new PartOnHand([.. lots[id]], today));
    }

    /// <summary>Of all parts that are no shims; what was expected before today may come today.</summary>
    public static async Task<ILookup<Guid, Coming>> Deliveries(WorkshopDbContext db, OpeningCalendar calendar, LocalDate today, CancellationToken ct) =>
        (await db.ExpectedDeliveries.AsNoTracking().Where(d => d.ClosedAt == null && d.Thickness == null)
            .Select(d => new { d.PartId, d.Quantity, d.ExpectedOn }).ToListAsync(ct))
        .ToLookup(d => d.PartId, d => new Coming(UsableFrom(calendar, d.ExpectedOn, today), d.Quantity, d.ExpectedOn));

    /// <summary>The working day after a delivery, as the search for slots counts.</summary>
    public static LocalDate UsableFrom(OpeningCalendar calendar, LocalDate expectedOn, LocalDate today)
    {
        var next = LocalDate.Max(expectedOn, today).PlusDays(1);
        return calendar.FirstOpenDay(next) ?? next;
    }
}
