using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Orders;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.Orders;

/// <summary>
/// All that proposals rest on, read once: who sells what, what is there, what comes, what booked visits want, what went out in the last
/// year, and how long before its day a visit is booked.
/// </summary>
internal sealed class OrderingOutlook
{
    /// <summary>Where neither the supplier nor the part says how long it takes; our own choice.</summary>
    public const int UsualDeliveryDays = 7;

    private const double SecondsOfWeek = 7 * 24 * 3600;

    private OrderingOutlook(OpeningCalendar calendar, LocalDate today, WorkshopProfile profile) => (Calendar, Today, Profile) = (calendar, today, profile);

    public OpeningCalendar Calendar { get; }

    public LocalDate Today { get; }

    public WorkshopProfile Profile { get; }

    public required IReadOnlyDictionary<Guid, Supplier> Suppliers { get; init; }

    /// <summary>What each part is bought from: preferred where there is a choice, of suppliers that are not retired.</summary>
    public required IReadOnlyDictionary<Guid, PartSupply> Supplies { get; init; }

    /// <summary>That may be proposed: sold by somebody, or wanted by a visit; no shims, nothing discontinued.</summary>
    public required IReadOnlyList<Part> Parts { get; init; }

    public required NoticeOfVisits Notice { get; init; }

    public required IReadOnlyDictionary<Guid, PartOnHand> There { get; init; }

    public required ILookup<Guid, Coming> Deliveries { get; init; }

    public required BookedKits Kits { get; init; }

    public required IReadOnlyDictionary<Guid, IssueHistory> Issues { get; init; }

    /// <param name="only">One part; all that may be ordered where it is not given.</param>
    public static async Task<OrderingOutlook> Read(WorkshopDbContext db, IClock clock, Part? only, CancellationToken ct)
    {
        var (now, calendar) = (clock.GetCurrentInstant(), await WorkshopTimes.ReadCalendar(db, ct));
        var today = calendar.Time.DayOf(now);
        var suppliers = await db.Suppliers.AsNoTracking().Where(s => !s.Retired).ToDictionaryAsync(s => s.Id, ct);
        var supplies = (await db.PartSupplies.AsNoTracking().Where(s => only == null || s.PartId == only.Id).ToListAsync(ct))
            .Where(s => suppliers.ContainsKey(s.SupplierId)).GroupBy(s => s.PartId)
            .ToDictionary(g => g.Key, g => g.OrderByDescending(s => s.Preferred).ThenBy(s => s.UnitCost ?? decimal.MaxValue).ThenBy(s => s.Id).First());
        var kits = await BookedKits.Read(db, calendar.Time, today, ct);
        var candidates = supplies.Keys.Union(kits.Needs.Select(n => n.Key)).ToList();
        var parts = await db.Parts.AsNoTracking()
            .Where(p => candidates.Contains(p.Id) && (only == null || p.Id == only.Id) && p.Kind != PartKind.Shim && !p.Discontinued && p.MergedIntoId == null)
            .OrderBy(p => p.Code).ToListAsync(ct);
        if (only is not null && parts.Count == 0)
        {
            parts = [only];
        }

        var ids = parts.ConvertAll(p => p.Id);
        return new OrderingOutlook(calendar, today, await db.WorkshopProfiles.AsNoTracking().SingleAsync(ct))
        {
            Suppliers = suppliers,
            Supplies = supplies,
            Parts = parts,
            Kits = kits,
            There = await PartsOnHand.Read(db, ids, today, ct),
            Deliveries = await PartsOnHand.Deliveries(db, calendar, today, ct),
            Notice = await ReadNotice(db, calendar.Time, now, ct),
            Issues = await ReadIssues(db, ids, now, ct),
        };
    }

    /// <summary>One part as things stand; where nobody sells it, in single pieces and by its own days.</summary>
    public OrderProposal Propose(Part part, int lastsDays)
    {
        var supply = Supplies.GetValueOrDefault(part.Id);
        var supplier = supply is null ? null : Suppliers[supply.SupplierId];
        var days = supply is null ? part.DeliveryDays ?? UsualDeliveryDays : DaysOf(supply, supplier!);
        var usableFrom = PartsOnHand.UsableFrom(Calendar, Today.PlusDays(days), Today);
        var there = There[part.Id];
        return OrderProposal.For(
            new PartToOrder(
                part,
                supply ?? new PartSupply { Id = Guid.Empty, PartId = part.Id, SupplierId = Guid.Empty, PackQuantity = part.PackQuantity ?? 1 },
                there.OnHand, there.Reserved, Deliveries[part.Id].Sum(d => d.Quantity), [.. Kits.Needs[part.Id]],
                Issues.GetValueOrDefault(part.Id, new IssueHistory([])), part.ServiceLevel ?? Profile.ServiceLevel, days, supplier?.DeliveryDaysSd ?? 0)
            {
                Lots = [.. there.Lots.Where(l => l.LastsUntil(Today)).Select(l => new LotQuantity(l.ExpiresOn, l.OnHand))],
            },
            Notice,
            new OrderDays(Today, usableFrom, usableFrom.PlusDays(lastsDays)));
    }

    public static int DaysOf(PartSupply supply, Supplier supplier) => supply.DeliveryDays ?? supplier.DeliveryDays;

    /// <summary>Of visits that took place in the last year.</summary>
    private static async Task<NoticeOfVisits> ReadNotice(WorkshopDbContext db, WorkshopTime time, Instant now, CancellationToken ct)
    {
        var from = now - Duration.FromDays(IssueHistory.MostWeeks * 7);
        var cards = await db.JobCards.AsNoTracking()
            .Where(c => c.StartsAt >= from && c.StartsAt <= now && (c.State == JobCardState.SignedOff || c.State == JobCardState.CheckedIn))
            .Select(c => new { c.BookedAt, c.StartsAt }).ToListAsync(ct);
        return new NoticeOfVisits([.. cards.Select(c => Math.Max(Period.DaysBetween(time.DayOf(c.BookedAt), time.DayOf(c.StartsAt)), 0))]);
    }

    /// <summary>
    /// Week by week back from now, for as long as the stores know the part; what was issued under the code of a part that was merged into
    /// it counts.
    /// </summary>
    private static async Task<IReadOnlyDictionary<Guid, IssueHistory>> ReadIssues(
        WorkshopDbContext db, List<Guid> parts, Instant now, CancellationToken ct)
    {
        var (ids, from) = (parts.ToArray(), now - Duration.FromDays(IssueHistory.MostWeeks * 7));
        var known = await db.Database.SqlQuery<Since>($"""
            select coalesce(p.merged_into_id, p.id) as part_id, min(first.moved_at) as moved_at
            from parts p cross join lateral (select moved_at from stock_movements m where m.part_id = p.id order by moved_at limit 1) first
            where coalesce(p.merged_into_id, p.id) = any({ids}) group by 1
            """).ToDictionaryAsync(s => s.PartId, s => s.MovedAt, ct);
        var issued = (await db.Database.SqlQuery<Week>($"""
            select coalesce(p.merged_into_id, p.id) as part_id, floor(extract(epoch from ({now} - m.moved_at)) / {SecondsOfWeek})::int as weeks_ago,
              -sum(m.on_hand_change) as quantity
            from stock_movements m join parts p on p.id = m.part_id
            where coalesce(p.merged_into_id, p.id) = any({ids}) and m.kind in ('issued', 'returned') and m.thickness_mm is null
              and m.moved_at > {from} and m.moved_at <= {now}
            group by 1, 2
            """).ToListAsync(ct)).ToLookup(w => w.PartId);
        return known.ToDictionary(k => k.Key, k =>
        {
            var weeks = new decimal[Math.Min((int)((now - k.Value).TotalDays / 7), IssueHistory.MostWeeks)];
            foreach (var week in issued[k.Key].Where(w => w.WeeksAgo < weeks.Length))
            {
                weeks[^(week.WeeksAgo + 1)] += week.Quantity;
            }

            return new IssueHistory(weeks);
        });
    }

    private sealed record Since(Guid PartId, Instant MovedAt);

    private sealed record Week(Guid PartId, int WeeksAgo, decimal Quantity);
}
