using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Arrivals;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Arrivals;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>The motorcycle is here: its odometer, its owner's words, what was seen, and when its engine last ran.</summary>
public static class CheckInMotorcycle
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Whole units of the instrument, as it shows them.</summary>
        public int? OdometerCount { get; init; }

        public string? OwnersWords { get; init; }

        public string? SeenOnArrival { get; init; }

        /// <summary>Complaints, leaks, damage, levels, lamps and more, each in a row of its own.</summary>
        public IReadOnlyList<RecordArrival.Row?>? Arrival { get; init; }

        /// <summary>Leaks, damage and lamps were looked for: of those of which nothing is said, none was seen.</summary>
        public bool NothingElseSeen { get; init; }

        /// <summary>
        /// When the engine last ran; or else <see cref="EngineStoppedDay"/> and <see cref="EngineStoppedTime"/> in the
        /// workshop's zone.
        /// </summary>
        public Instant? EngineStoppedAt { get; init; }

        public LocalDate? EngineStoppedDay { get; init; }

        public LocalTime? EngineStoppedTime { get; init; }
    }

    /// <param name="ColdFrom">When the cold soak of the pinned specification ends, if nobody starts the engine before.</param>
    public sealed record Answer(int Number, JobCardState State, Instant ColdFrom);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.OdometerCount).IsGiven("what the odometer shows").IsOdometerCount();
            RuleFor(r => r.OwnersWords).IsAtMost(Limits.Remark);
            RuleFor(r => r.SeenOnArrival).IsAtMost(Limits.Remark);
            this.NotesAreShaped(r => r.Arrival);
            this.MomentIsGiven(r => r.EngineStoppedAt, r => r.EngineStoppedDay, r => r.EngineStoppedTime, "when the engine last ran");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var now = clock.GetCurrentInstant();
        var (stoppedField, stopped) = Moments.Read(time, "engineStoppedAt", request.EngineStoppedAt,
            "engineStoppedTime", request.EngineStoppedDay, request.EngineStoppedTime);
        if (!(await OpenCard.Lock(db, request.Number, ct)).TryGet(out var open, out var problem)
            || !stopped.TryGet(out var stoppedAt, out problem))
        {
            return problem;
        }

        if (CardRules.RefuseCheckIn(open.Card) is { } refused)
        {
            return refused;
        }

        if (stoppedAt > now)
        {
            return Problem.Impossible("engine-stops-later", stoppedField,
                $"{stoppedField} is {time.Say(stoppedAt)}, which is still to come; it is {time.Say(now)} now. Give when the engine last ran.");
        }

        var typed = new OdometerEntry.Typed("odometerCount", request.OdometerCount!.Value, time.DayOf(now), request.Number);
        if (!(await OdometerEntry.Add(db, open.Card.MotorcycleId, typed, actor, clock, ct)).TryGet(out var reading, out problem))
        {
            return problem;
        }

        var arrival = new ArrivalEntry(db, request.Number, ArrivalStage.OnArrival, null, actor, clock, []);
        if (arrival.Add("arrival", request.Arrival, request.NothingElseSeen) is { } wrong)
        {
            return wrong;
        }

        db.CheckIns.Add(new CheckIn
        {
            JobCardNumber = request.Number,
            OdometerReadingId = reading.Id,
            OwnersWordsRemarkId = Remarks.Add(db, request.OwnersWords, actor, clock),
            SeenOnArrivalRemarkId = Remarks.Add(db, request.SeenOnArrival, actor, clock),
            EngineStoppedAt = stoppedAt,
            CheckedInBy = actor.PersonId,
            CheckedInAt = now,
        });
        open.Card.State = JobCardState.CheckedIn;
        await db.SaveChangesAsync(ct);
        await DueRows.Rewrite(db, open.Card.MotorcycleId, clock, ct);
        return new Answer(request.Number, open.Card.State, CardRules.SoakEndsAt(stoppedAt, open.Specification.Cold));
    }
}
