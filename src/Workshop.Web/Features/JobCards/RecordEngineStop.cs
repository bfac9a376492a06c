using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>The engine ran again, if only for a moment, and stopped: its cold soak begins anew.</summary>
public static class RecordEngineStop
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>When it stopped; or else <see cref="StoppedDay"/> and <see cref="StoppedTime"/> in the workshop's zone.</summary>
        public Instant? StoppedAt { get; init; }

        public LocalDate? StoppedDay { get; init; }

        public LocalTime? StoppedTime { get; init; }
    }

    public sealed record Answer(int Number, Instant StoppedAt, Instant ColdFrom);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => this.MomentIsGiven(r => r.StoppedAt, r => r.StoppedDay, r => r.StoppedTime, "when the engine stopped");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var now = clock.GetCurrentInstant();
        var (field, moment) = Moments.Read(time, "stoppedAt", request.StoppedAt, "stoppedTime", request.StoppedDay, request.StoppedTime);
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem)
            || !moment.TryGet(out var stoppedAt, out problem))
        {
            return problem;
        }

        if (stoppedAt > now)
        {
            return Problem.Impossible("engine-stops-later", field,
                $"{field} is {time.Say(stoppedAt)}, which is still to come; it is {time.Say(now)} now. Give when the engine last ran.");
        }

        if (stoppedAt < open.EngineStoppedAt)
        {
            return Problem.Impossible("engine-stopped-later", field,
                $"{field} is {time.Say(stoppedAt)}, but the engine ran until {time.Say(open.EngineStoppedAt.Value)}; a stop after that is allowed.");
        }

        Add(db, request.Number, stoppedAt, actor, clock);
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, stoppedAt, CardRules.SoakEndsAt(stoppedAt, open.Specification.Cold));
    }

    internal static void Add(WorkshopDbContext db, int number, Instant stoppedAt, Actor actor, IClock clock) => db.EngineStops.Add(new EngineStop
    {
        Id = NewId.At(clock), JobCardNumber = number, StoppedAt = stoppedAt, EnteredBy = actor.PersonId, EnteredAt = clock.GetCurrentInstant(),
    });
}
