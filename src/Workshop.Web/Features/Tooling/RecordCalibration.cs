using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>
/// A calibration by its certificate. The latest by day holds: cycles are counted from its day on, and damage and a release from before it
/// end. An older one is history only.
/// </summary>
public static class RecordCalibration
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public LocalDate? DoneOn { get; init; }

        /// <summary>As the certificate states it; absent: by the instrument's months, where they are known.</summary>
        public LocalDate? DueOn { get; init; }

        /// <summary>Its number.</summary>
        public string? Certificate { get; init; }

        public string? Laboratory { get; init; }

        /// <summary>As the certificate states it; absent: what is known stays.</summary>
        public decimal? Uncertainty { get; init; }

        /// <summary>It was out for it and is back in the workshop.</summary>
        public bool IsBack { get; init; }
    }

    public sealed record Answer(Guid CalibrationId, LocalDate? DueOn, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.DoneOn).IsGiven("the day of the calibration");
            RuleFor(r => r.Certificate).IsGiven("the number of the certificate").IsAtMost(Limits.Name);
            RuleFor(r => r.Laboratory).IsGiven("who calibrated it").IsAtMost(Limits.Name);
            RuleFor(r => r.Uncertainty).IsWithin(0, InstrumentRules.LargestRange, InstrumentRules.Decimals, "of its unit, or percent");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await InstrumentLock.Take(db, request.Id, ct)).TryGet(out var instrument, out var problem))
        {
            return problem;
        }

        var now = clock.GetCurrentInstant();
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        var calibration = new Calibration
        {
            Id = NewId.At(clock), InstrumentId = instrument.Id, DoneOn = request.DoneOn!.Value,
            DueOn = InstrumentChanges.DueAfter(instrument, request.DoneOn.Value, request.DueOn), Certificate = request.Certificate!.Trim(),
            Laboratory = request.Laboratory!.Trim(), Uncertainty = request.Uncertainty, EnteredBy = actor.PersonId, EnteredAt = now,
        };
        if (InstrumentChanges.Apply(instrument, calibration, today) is { } impossible)
        {
            return impossible;
        }

        db.Calibrations.Add(calibration);
        if (request.IsBack && instrument.State != InstrumentState.InUse)
        {
            InstrumentChanges.Apply(instrument, InstrumentEventKind.BackInUse, null, today);
            db.InstrumentEvents.Add(new InstrumentEvent
            {
                Id = NewId.At(clock), InstrumentId = instrument.Id, Kind = InstrumentEventKind.BackInUse, EnteredBy = actor.PersonId, At = now,
            });
        }

        return new Answer(calibration.Id, calibration.DueOn, await InstrumentLock.Save(db, instrument, request.RowVersion!.Value, ct));
    }
}
