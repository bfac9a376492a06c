using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>The manager lets an instrument be used in spite of what stands against it today, with a reason.</summary>
public static class ReleaseInstrument
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>Why it may be used all the same: how it was checked.</summary>
        public string? Reason { get; init; }

        /// <summary>The last day; absent: until the next calibration.</summary>
        public LocalDate? Until { get; init; }
    }

    public sealed record Answer(Guid EventId, string StateInWords, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Reason).IsGiven("why it may be used all the same").IsAtMost(Limits.Remark);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await InstrumentLock.Take(db, request.Id, ct)).TryGet(out var instrument, out var problem))
        {
            return problem;
        }

        var time = await WorkshopTimes.Read(db, ct);
        var (now, today) = (clock.GetCurrentInstant(), time.DayOf(clock.GetCurrentInstant()));
        var cycles = (await WrenchesOnHand.Cycles(db, [instrument.Id], time, ct)).GetValueOrDefault(instrument.Id);
        if (InstrumentChanges.Release(instrument, request.Until, today, cycles) is { } refused)
        {
            return refused;
        }

        var released = new InstrumentEvent
        {
            Id = NewId.At(clock), InstrumentId = instrument.Id, Kind = InstrumentEventKind.Released, Until = request.Until,
            RemarkId = Remarks.Add(db, request.Reason, actor, clock), EnteredBy = actor.PersonId, At = now,
        };
        db.InstrumentEvents.Add(released);
        var version = await InstrumentLock.Save(db, instrument, request.RowVersion!.Value, ct);
        return new Answer(released.Id, instrument.StateOn(today, cycles), version);
    }
}
