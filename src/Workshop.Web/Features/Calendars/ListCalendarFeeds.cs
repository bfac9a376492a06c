using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Calendars;

/// <summary>The bays and technicians whose links the person may make, each with the links that were made.</summary>
public static class ListCalendarFeeds
{
    public sealed record Request;

    public sealed record Answer(IReadOnlyList<OfResource> Resources);

    public sealed record OfResource(Guid ResourceId, ResourceKind Kind, string Name, IReadOnlyList<Link> Links);

    public sealed record Link(Guid Id, string MadeBy, Instant MadeAt, Instant? RevokedAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var resources = await db.Resources.AsNoTracking()
            .Where(r => !r.Retired && (r.Kind == ResourceKind.Bay || r.Kind == ResourceKind.Technician)).ToListAsync(ct);
        var links = (await (
            from feed in db.CalendarFeeds.AsNoTracking()
            join person in db.People on feed.CreatedBy equals person.Id
            orderby feed.CreatedAt descending
            select new { feed.ResourceId, Link = new Link(feed.Id, person.Name, feed.CreatedAt, feed.RevokedAt) })
            .ToListAsync(ct)).ToLookup(f => f.ResourceId, f => f.Link);
        return new Answer([.. resources
            .Where(r => FeedRules.MayHandle(actor, r))
            .OrderBy(r => r.Kind).ThenBy(r => r.Name, StringComparer.Ordinal)
            .Select(r => new OfResource(r.Id, r.Kind, r.Name, [.. links[r.Id]]))]);
    }
}
