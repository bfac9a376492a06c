using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Records;

/// <summary>Ends a link at once. One that has ended stays so; to revoke it again changes nothing.</summary>
public static class RevokeRecordLink
{
    public sealed record Request(Guid Id);

    public sealed record Answer(Guid Id, Instant RevokedAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var now = clock.GetCurrentInstant();
        await db.RecordLinks.Where(l => l.Id == request.Id && l.RevokedAt == null).ExecuteUpdateAsync(
            set => set.SetProperty(l => l.RevokedAt, now).SetProperty(l => l.RevokedBy, actor.PersonId), ct);
        return await db.RecordLinks.Where(l => l.Id == request.Id).Select(l => l.RevokedAt).SingleOrDefaultAsync(ct) is { } revoked
            ? new Answer(request.Id, revoked)
            : Problem.NotFound($"The link {request.Id} to a record");
    }
}
