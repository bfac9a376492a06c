using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Intervals;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Intervals;

/// <summary>
/// Asks for what the whole fleet is due for to be reckoned anew; the worker takes it up within seconds. One that waits already is
/// answered instead of a second one.
/// </summary>
public static class RequestRecompute
{
    public sealed record Request;

    public static async Task<Outcome<GetRecompute.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var waiting = await db.DueRecomputes.AsNoTracking().Where(r => r.StartedAt == null).OrderBy(r => r.RequestedAt).FirstOrDefaultAsync(ct);
        if (waiting is null)
        {
            waiting = new DueRecompute { Id = NewId.At(clock), RequestedBy = actor.PersonId, RequestedAt = clock.GetCurrentInstant() };
            db.DueRecomputes.Add(waiting);
            await db.SaveChangesAsync(ct);
        }

        return GetRecompute.AnswerOf(waiting, riding: null);
    }
}
