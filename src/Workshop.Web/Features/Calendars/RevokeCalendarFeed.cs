using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Calendars;

/// <summary>Ends a link at once. One that has ended stays so; to revoke it again changes nothing.</summary>
public static class RevokeCalendarFeed
{
    public sealed record Request(Guid Id);

    public sealed record Answer(Guid Id, Instant RevokedAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var feed = await db.CalendarFeeds.SingleOrDefaultAsync(f => f.Id == request.Id, ct);
        if (feed is null)
        {
            return Problem.NotFound($"The calendar link {request.Id}");
        }

        var resource = await db.Resources.AsNoTracking().SingleAsync(r => r.Id == feed.ResourceId, ct);
        if (!FeedRules.MayHandle(actor, resource))
        {
            return FeedRules.Refuse(resource);
        }

        feed.RevokedAt ??= clock.GetCurrentInstant();
        await db.SaveChangesAsync(ct);
        return new Answer(feed.Id, feed.RevokedAt.Value);
    }
}
