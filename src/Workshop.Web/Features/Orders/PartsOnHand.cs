using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Orders;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Orders;

/// <summary>What is there of a part.</summary>
/// <param name="OnHand">Fit to be used, whoever has reserved it.</param>
/// <param name="Reserved">Of all that lies there.</param>
/// <param name="Expired">There, but beyond its last day; not counted.</param>
internal sealed record PartOnHand(decimal OnHand, decimal Reserved, decimal Expired)
{
    public static readonly PartOnHand Nothing = new(0, 0, 0);
}

/// <summary>A delivery that is expected, and from when work can count on it.</summary>
internal sealed record DeliveryAhead(Guid PartId, decimal Quantity, LocalDate ExpectedOn, LocalDate UsableFrom);

/// <summary>Reads what is there and what comes of parts that are no shims.</summary>
internal static class PartsOnHand
{
    public static async Task<IReadOnlyDictionary<Guid, PartOnHand>> Read(
        WorkshopDbContext db, IReadOnlyCollection<Guid> parts, LocalDate today, CancellationToken ct) =>
        await (
            from balance in db.StockBalances.AsNoTracking()
            where parts.Contains(balance.PartId) && balance.Thickness == null && balance.Condition == StockCondition.New
            join found in db.StockLots on balance.LotId equals found.Id into lots
            from lot in lots.DefaultIfEmpty()
            group new { balance, Expired = lot.ExpiresOn != null && lot.ExpiresOn < today } by balance.PartId into there
            select new
            {
                there.Key,
                OnHand = there.Sum(t => t.Expired ? 0 : t.balance.OnHand),
                Expired = there.Sum(t => t.Expired ? t.balance.OnHand : 0),
                Reserved = there.Sum(t => t.balance.Reserved),
            }).ToDictionaryAsync(t => t.Key, t => new PartOnHand(t.OnHand, t.Reserved, t.Expired), ct);

    /// <summary>Of all parts that are no shims; what was expected before today may come today.</summary>
    public static async Task<ILookup<Guid, DeliveryAhead>> Deliveries(
        WorkshopDbContext db, OpeningCalendar calendar, LocalDate today, CancellationToken ct) =>
        (await db.ExpectedDeliveries.AsNoTracking().Where(d => d.ClosedAt == null && d.Thickness == null)
            .Select(d => new { d.PartId, d.Quantity, d.ExpectedOn }).ToListAsync(ct))
        .ToLookup(d => d.PartId, d => new DeliveryAhead(d.PartId, d.Quantity, d.ExpectedOn, UsableFrom(calendar, d.ExpectedOn, today)));

    /// <summary>The working day after a delivery, as the search for slots counts.</summary>
    public static LocalDate UsableFrom(OpeningCalendar calendar, LocalDate expectedOn, LocalDate today)
    {
        var next = LocalDate.Max(expectedOn, today).PlusDays(1);
        return calendar.FirstOpenDay(next) ?? next;
    }

    /// <summary>One part on the days to come.</summary>
    public static ProjectedStock Project(PartOnHand there, IEnumerable<DeliveryAhead> deliveries, IEnumerable<BookedNeed> needs) =>
        ProjectedStock.Of(there.OnHand, [.. deliveries.Select(d => new Coming(d.UsableFrom, d.Quantity))], [.. needs]);
}
