using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Calendars;

/// <summary>What a calendar link shows: no more than a technician's phone needs, and nobody's name.</summary>
/// <param name="Workshop">Tells the events of one workshop from another's.</param>
internal sealed record FeedContent(Guid ResourceId, string ResourceName, string Workshop, IReadOnlyList<FeedContent.Entry> Entries)
{
    private static readonly Duration KeptFor = Duration.FromDays(60);

    /// <param name="With">The bay of a technician's event, the technician of a bay's.</param>
    public sealed record Entry(CalendarEvent Event, string Registration, IReadOnlyList<string> Items, string? With);

    /// <summary>The content behind a link; nothing when there is no such link, or it was revoked.</summary>
    public static async Task<FeedContent?> Find(WorkshopDbContext db, string secret, Instant now, CancellationToken ct)
    {
        var digest = LinkSecret.DigestOf(secret);
        var resource = await (
            from feed in db.CalendarFeeds
            join r in db.Resources on feed.ResourceId equals r.Id
            where feed.SecretDigest == digest && feed.RevokedAt == null
            select r).AsNoTracking().SingleOrDefaultAsync(ct);
        if (resource is null)
        {
            return null;
        }

        var shown = new Interval(now - KeptFor, Instant.MaxValue);
        var numbers = await db.Occupancies
            .FromSql($"select * from occupancies where resource_id = {resource.Id} and upper(span) > {shown.Start}")
            .Select(o => o.JobCardNumber).Distinct().ToListAsync(ct);
        return new FeedContent(
            resource.Id, resource.Name, (await db.WorkshopProfiles.AsNoTracking().SingleAsync(ct)).Name,
            await Read(db, resource, numbers, shown.Start, ct));
    }

    private static async Task<IReadOnlyList<Entry>> Read(
        WorkshopDbContext db, Resource resource, List<int> numbers, Instant from, CancellationToken ct)
    {
        var cards = await (
            from card in db.JobCards.AsNoTracking()
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            where numbers.Contains(card.Number)
            select new { Card = card, motorcycle.Registration }).ToListAsync(ct);
        var ends = await Ends(db, numbers, ct);
        var items = await Items(db, [.. cards.Select(c => c.Card)], ct);
        var taken = (await (
            from occupancy in db.Occupancies.AsNoTracking()
            join r in db.Resources on occupancy.ResourceId equals r.Id
            where numbers.Contains(occupancy.JobCardNumber) && (r.Kind == ResourceKind.Bay || r.Kind == ResourceKind.Technician)
            select new { Occupancy = occupancy, Resource = r }).ToListAsync(ct)).ToLookup(t => t.Occupancy.JobCardNumber);
        var other = resource.Kind == ResourceKind.Bay ? ResourceKind.Technician : ResourceKind.Bay;
        return [.. cards.OrderBy(c => c.Card.Number).SelectMany(c =>
        {
            var mine = taken[c.Card.Number].Where(t => t.Resource.Id == resource.Id).Select(t => t.Occupancy).ToList();
            var ended = c.Card.State is JobCardState.Booked or JobCardState.CheckedIn
                ? null
                : new VisitEnd(c.Card.State, ends.TryGetValue(c.Card.Number, out var at) ? at : null);
            return CalendarEvents.Of(c.Card, ended, mine, HeldSpans.LastPlan(taken[c.Card.Number].Select(t => t.Occupancy)))
                .Where(e => e.Span.End > from)
                .Select(e => new Entry(e, c.Registration, items[c.Card.Number], taken[c.Card.Number]
                    .Where(t => t.Resource.Kind == other && t.Occupancy.Live
                        && t.Occupancy.Span.Start < e.Span.End && e.Span.Start < t.Occupancy.Span.End)
                    .Select(t => t.Resource.Name).Order(StringComparer.Ordinal).FirstOrDefault()));
        })];
    }

    private static async Task<Dictionary<int, Instant>> Ends(WorkshopDbContext db, List<int> numbers, CancellationToken ct)
    {
        var ends = await db.SignOffs.Where(s => numbers.Contains(s.JobCardNumber)).Select(s => new { s.JobCardNumber, At = s.SignedAt })
            .Concat(db.Cancellations.Where(c => numbers.Contains(c.JobCardNumber)).Select(c => new { c.JobCardNumber, At = c.CancelledAt }))
            .ToListAsync(ct);
        return ends.ToDictionary(e => e.JobCardNumber, e => e.At);
    }

    private static async Task<Dictionary<int, IReadOnlyList<string>>> Items(
        WorkshopDbContext db, IReadOnlyCollection<JobCard> cards, CancellationToken ct)
    {
        var (numbers, versions) = (cards.Select(c => c.Number).ToList(), cards.Select(c => c.EngineModelVersionId).Distinct().ToList());
        var booked = (await db.JobCardItems.AsNoTracking()
            .Where(i => numbers.Contains(i.JobCardNumber) && (i.Likelihood != Likelihood.Possible || i.StartedAt != null))
            .ToListAsync(ct)).ToLookup(i => i.JobCardNumber);
        var names = (await db.EngineModelVersions.AsNoTracking().Where(v => versions.Contains(v.Id)).ToListAsync(ct))
            .ToDictionary(v => v.Id, v => v.Specification.ServiceItems.ToDictionary(i => i.Code, i => i.Name, StringComparer.Ordinal));
        return cards.ToDictionary(c => c.Number, c => (IReadOnlyList<string>)
            [.. booked[c.Number].Select(i => names[c.EngineModelVersionId][i.ServiceItemCode]).Order(StringComparer.Ordinal)]);
    }
}
