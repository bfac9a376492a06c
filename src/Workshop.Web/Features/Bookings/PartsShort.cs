using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Kits;
using Workshop.Web.Features.Orders;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// What the stores lack of a visit's kit, and from when on the work can count on it: the opening of the working day after the
/// delivery. Certain and likely items count; what only lies ready holds nothing up.
/// </summary>
/// <param name="From">When the last of the parts whose delivery is known is here; absent where none is short.</param>
/// <param name="Unknown">Of at least one part nobody knows when it comes; no start waits for it.</param>
public sealed record PartsShort(IReadOnlyList<PartsShort.Part> Parts, Instant? From, bool Unknown)
{
    /// <param name="ShortBy">In the part's own unit.</param>
    /// <param name="ExpectedOn">Absent where nobody knows.</param>
    /// <param name="Ordered">A delivery of enough of it is expected; else it would have to be ordered today.</param>
    public sealed record Part(
        string PartCode, string? Name, PartUnit Unit, decimal ShortBy, LocalDate? ExpectedOn, bool Ordered, Instant? From, string Sentence);

    internal static async Task<PartsShort> Read(
        WorkshopDbContext db, VisitCase visit, OpeningCalendar calendar, int? cardNumber, Instant now, CancellationToken ct)
    {
        var today = calendar.Time.DayOf(now);
        var kit = await KitCase.Of(
            db, visit.Specification,
            visit.Items.Where(i => i.Likelihood != Likelihood.Possible).Select(i => i.Item),
            visit.Items.Where(i => i.Likelihood == Likelihood.Possible).Select(i => i.Item),
            cardNumber, today, ct);
        var lines = (await KitOnShelf.Read(db, kit, cardNumber, closed: false, lacking: null, ct)).Lines.Where(l => l.IsShortOfNeeded).ToList();
        if (lines.Count == 0)
        {
            return new PartsShort([], null, false);
        }

        var known = kit.Kit.Lines.Where(l => l.Part is not null).ToDictionary(l => l.PartCode, l => kit.TakenFor(l)!, StringComparer.Ordinal);
        var ids = known.Values.Select(p => p.Id).Distinct().ToList();
        var deliveries = (await db.ExpectedDeliveries.AsNoTracking()
            .Where(d => ids.Contains(d.PartId) && d.ClosedAt == null && d.Thickness == null).ToListAsync(ct)).ToLookup(d => d.PartId);
        var days = await DeliveryTimes.Read(db, ids, ct);
        var parts = lines.ConvertAll(line => known.GetValueOrDefault(line.PartCode) is { } part
            ? Of(line, days.TryGetValue(part.Id, out var its) ? its : null, deliveries[part.Id], calendar, today)
            : Of(line, null, [], calendar, today));
        return new PartsShort(parts, parts.Max(p => p.From), parts.Exists(p => p.From is null));
    }

    private static Part Of(
        KitOnShelf.Line line, int? deliveryDays, IEnumerable<ExpectedDelivery> deliveries, OpeningCalendar calendar, LocalDate today)
    {
        var shortBy = line.ShortBy - line.HaveReady;
        var (coming, arrives) = (0m, (LocalDate?)null);
        foreach (var delivery in deliveries.OrderBy(d => d.ExpectedOn))
        {
            coming += delivery.Quantity;
            arrives = delivery.ExpectedOn;
            if (coming >= shortBy)
            {
                break;
            }
        }

        var ordered = coming >= shortBy;
        var expected = ordered ? arrives : deliveryDays is { } days ? today.PlusDays(days) : null;
        // What was expected before today and is not here yet may come today.
        var from = expected is { } day && calendar.FirstOpenDay(LocalDate.Max(day, today).PlusDays(1)) is { } open ? calendar.OpenOn(open)?.Start : null;
        var quantity = line.Unit == PartUnit.Millilitre ? $"{Say(shortBy)} ml" : Say(shortBy);
        var what = $"{line.Name ?? line.PartCode}: {quantity} short";
        return new Part(line.PartCode, line.Name, line.Unit, shortBy, expected, ordered, from, (from, ordered) switch
        {
            (null, _) => $"{what}, on no order that brings enough, and nobody has entered how long it takes; the starts do not wait for it. Order it before you promise a time.",
            ({ } at, true) => $"{what}, expected on {Days.Write(expected!.Value)}{(expected < today ? ", which is past" : "")}; work from {calendar.Time.Say(at)} on.",
            ({ } at, false) => $"{what} and not on order; ordered today it comes on {Days.Write(expected!.Value)}, work from {calendar.Time.Say(at)} on.",
        });
    }

    private static string Say(decimal quantity) => quantity.ToString("0.####", CultureInfo.InvariantCulture);
}
