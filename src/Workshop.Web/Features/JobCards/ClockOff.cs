using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>Somebody stops working on a job, with a reason. A clock may be stopped on a card that was signed off meanwhile.</summary>
public static class ClockOff
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public PauseReason? Reason { get; init; }

        /// <summary>Now, where it is not given.</summary>
        public Instant? At { get; init; }
    }

    public sealed record Answer(int Number, Instant Since, Instant Until, PauseReason Reason);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Reason).IsGiven("why the clock stops").IsInEnum();
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        if (!(await OpenCard.Lock(db, request.Number, ct)).TryGet(out _, out var problem))
        {
            return problem;
        }

        var running = await db.WorkSpells.SingleOrDefaultAsync(s => s.PersonId == actor.PersonId && s.EndedAt == null, ct);
        if (running is null || running.JobCardNumber != request.Number)
        {
            return Problem.Conflict("clock-stands", running is null
                ? $"Your clock does not run on job card {request.Number}."
                : $"Your clock runs on job card {running.JobCardNumber}, not on {request.Number}.");
        }

        var at = request.At ?? now;
        if (await WorkClockTimes.Refuse(db, actor, running, at, now, ct) is { } refused)
        {
            return refused;
        }

        (running.EndedAt, running.EndedFor) = (at, request.Reason!.Value);
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, running.StartedAt, at, request.Reason.Value);
    }
}
