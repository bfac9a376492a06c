using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
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

/// <summary>
/// What happened to an instrument: dropped, overloaded, sent for calibration, back in use, handed to somebody or put back, withdrawn.
/// Whoever measures says so; what was withdrawn is taken back into use by a manager only.
/// </summary>
public static class RecordInstrumentEvent
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>Any but released, which has a reason and a route of its own.</summary>
        public InstrumentEventKind? Kind { get; init; }

        /// <summary>Who has it from now on; absent where it is put back into its place. Only where it is handed over.</summary>
        public Guid? HolderId { get; init; }

        public string? Remark { get; init; }
    }

    public sealed record Answer(Guid EventId, InstrumentState State, string StateInWords, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Kind).IsGiven("what happened: dropped, overloaded, sentForCalibration, backInUse, handedTo or withdrawn");
            RuleFor(r => r.Kind).NotEqual(InstrumentEventKind.Released)
                .WithMessage("kind is released: a release has a reason; send it to the instrument's release.");
            RuleFor(r => r.HolderId).Null().When(r => r.Kind is not null and not InstrumentEventKind.HandedTo)
                .WithMessage("holderId is given, but it is handed to nobody; leave it out, or say handedTo.");
            RuleFor(r => r.Remark).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await InstrumentLock.Take(db, request.Id, ct)).TryGet(out var instrument, out var problem))
        {
            return problem;
        }

        var kind = request.Kind!.Value;
        if (kind == InstrumentEventKind.BackInUse && instrument.State == InstrumentState.Withdrawn && !actor.Is(Roles.Manager))
        {
            return new Problem(ProblemKind.Forbidden, "manager-only", $"{instrument.Name} ({instrument.SerialNumber}) is withdrawn; a manager takes it back into use.");
        }

        if (request.HolderId is { } holder && !await db.People.AnyAsync(p => p.Id == holder && p.IsStaff && p.ErasedAt == null, ct))
        {
            return Problem.Impossible("person-unknown", "holderId", $"holderId is {holder}: nobody of the workshop has it.");
        }

        var time = await WorkshopTimes.Read(db, ct);
        var now = clock.GetCurrentInstant();
        if (InstrumentChanges.Apply(instrument, kind, request.HolderId, time.DayOf(now)) is { } impossible)
        {
            return impossible;
        }

        var happened = new InstrumentEvent
        {
            Id = NewId.At(clock), InstrumentId = instrument.Id, Kind = kind, HolderId = request.HolderId,
            RemarkId = Remarks.Add(db, request.Remark, actor, clock), EnteredBy = actor.PersonId, At = now,
        };
        db.InstrumentEvents.Add(happened);
        var version = await InstrumentLock.Save(db, instrument, request.RowVersion!.Value, ct);
        var cycles = (await WrenchesOnHand.Cycles(db, [instrument.Id], time, ct)).GetValueOrDefault(instrument.Id);
        return new Answer(happened.Id, instrument.State, instrument.StateOn(time.DayOf(now), cycles), version);
    }
}
