using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.JobCards;

/// <summary>Somebody begins to work on a job. Where the person's clock still runs on another, that one stops at the same moment.</summary>
public static class ClockOn
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Now, where it is not given.</summary>
        public Instant? At { get; init; }
    }

    /// <param name="StoppedOn">The job card on which the clock ran until now.</param>
    public sealed record Answer(int Number, Instant Since, int? StoppedOn);

    public sealed class Validator : AbstractValidator<Request>;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out _, out var problem))
        {
            return problem;
        }

        var at = request.At ?? now;
        var running = await db.WorkSpells.SingleOrDefaultAsync(s => s.PersonId == actor.PersonId && s.EndedAt == null, ct);
        if (await WorkClockTimes.Refuse(db, actor, running, at, now, ct) is { } refused)
        {
            return refused;
        }

        if (running?.JobCardNumber == request.Number)
        {
            return new Answer(request.Number, running.StartedAt, null);
        }

        if (running is not null)
        {
            (running.EndedAt, running.EndedFor) = (at, PauseReason.OtherJob);
            await db.SaveChangesAsync(ct);
        }

        db.WorkSpells.Add(new WorkSpell
        {
            Id = NewId.At(now), JobCardNumber = request.Number, PersonId = actor.PersonId, StartedAt = at,
        });
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, at, running?.JobCardNumber);
    }
}

/// <summary>When a clock may be set going or stopped.</summary>
internal static class WorkClockTimes
{
    /// <summary>Not to come, and not before the person's clock was touched last.</summary>
    public static async Task<Problem?> Refuse(
        WorkshopDbContext db, Actor actor, WorkSpell? running, Instant at, Instant now, CancellationToken ct)
    {
        var last = running?.StartedAt ?? await db.WorkSpells.Where(s => s.PersonId == actor.PersonId).MaxAsync(s => s.EndedAt, ct);
        if (at <= now && !(at < last))
        {
            return null;
        }

        var time = await WorkshopTimes.Read(db, ct);
        return Problem.Impossible("clock-time", "at",
            $"at is {time.Say(at)}: {(last is { } from ? $"from {time.Say(from)}, when your clock was touched last, until" : "until")} now, {time.Say(now)}, is allowed.");
    }
}
