using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Records;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Records;

/// <summary>The links to the record of a card, newest first; none of them says its secret.</summary>
public static class ListRecordLinks
{
    public sealed record Request(int Number);

    public sealed record Answer(int JobCardNumber, IReadOnlyList<Link> Links);

    /// <param name="Opened">How often page or PDF was opened.</param>
    public sealed record Link(
        Guid Id, string MadeBy, Instant MadeAt, Instant ExpiresAt, RecordLinkState State, Instant? RevokedAt, int Opened, Instant? LastOpenedAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!await db.JobCards.AnyAsync(c => c.Number == request.Number, ct))
        {
            return Problem.NotFound($"Job card {request.Number}");
        }

        var now = clock.GetCurrentInstant();
        var links = await (
            from link in db.RecordLinks.AsNoTracking()
            join person in db.People on link.CreatedBy equals person.Id
            where link.JobCardNumber == request.Number
            orderby link.CreatedAt descending, link.Id descending
            select new { Row = link, person.Name }).ToListAsync(ct);
        return new Answer(request.Number, [.. links.Select(l => new Link(
            l.Row.Id, l.Name, l.Row.CreatedAt, l.Row.ExpiresAt, l.Row.StateAt(now), l.Row.RevokedAt, l.Row.Opened, l.Row.LastOpenedAt))]);
    }
}
