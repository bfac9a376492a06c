using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>
/// The one way in which an odometer reading gets in: typed at the counter, at check-in, at sign-off or from an old worksheet.
/// Adds the row; the use case saves and, where nothing more of the history changes, has what is due rewritten.
/// </summary>
internal static class OdometerEntry
{
    /// <param name="Field">The field's name as the caller wrote it, for the sentence of a refusal.</param>
    /// <param name="Count">Whole units of the instrument.</param>
    public sealed record Typed(string Field, int Count, LocalDate ReadOn, int? JobCardNumber = null)
    {
        /// <summary>The name of the field with the day, where it is another.</summary>
        public string DayField { get; init; } = Field;

        /// <summary>The reading that this one corrects, and why.</summary>
        public OdometerReading? Supersedes { get; init; }

        public Guid? ReasonRemarkId { get; init; }
    }

    /// <summary>The reading as a row that waits to be saved; the one that stands where the same was typed before.</summary>
    public static async Task<Outcome<OdometerReading>> Add(
        WorkshopDbContext db, Guid motorcycleId, Typed typed, Actor actor, IClock clock, CancellationToken ct)
    {
        await MotorcycleLock.Take(db, motorcycleId, ct);
        var now = clock.GetCurrentInstant();
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        if (OdometerRules.JudgeDay(typed.DayField, typed.ReadOn, today) is { } notYet)
        {
            return notYet;
        }

        var instrument = await InstrumentOf(db, motorcycleId, typed, ct);

        // Rows that this use case has added already count as well, or a batch could run backwards inside itself.
        var pending = db.ChangeTracker.Entries<OdometerReading>()
            .Where(e => e.State == EntityState.Added && e.Entity.OdometerId == instrument.Id)
            .Select(e => e.Entity);
        var others = (await Standing(db, motorcycleId).Where(r => r.OdometerId == instrument.Id).ToListAsync(ct))
            .Concat(pending).Where(r => r.Id != typed.Supersedes?.Id).ToList();
        var same = others.FirstOrDefault(
            r => r.ReadOn == typed.ReadOn && r.Count == typed.Count && r.JobCardNumber == typed.JobCardNumber);
        if (same is not null && typed.Supersedes is null)
        {
            return same;
        }

        if (OdometerRules.Judge(typed.Field, typed.Count, typed.ReadOn, instrument, others) is { } problem)
        {
            return problem;
        }

        var reading = new OdometerReading
        {
            Id = NewId.At(now),
            OdometerId = instrument.Id,
            MotorcycleId = motorcycleId,
            ReadOn = typed.ReadOn,
            Count = typed.Count,
            Unit = instrument.Unit,
            Distance = instrument.DistanceAt(typed.Count),
            JobCardNumber = typed.JobCardNumber ?? typed.Supersedes?.JobCardNumber,
            SupersedesId = typed.Supersedes?.Id,
            ReasonRemarkId = typed.ReasonRemarkId,
            MeasuredBy = actor.PersonId,
            EnteredBy = actor.PersonId,
            EnteredAt = now,
        };
        db.OdometerReadings.Add(reading);
        return reading;
    }

    /// <summary>The readings that no correction has superseded.</summary>
    public static IQueryable<OdometerReading> Standing(WorkshopDbContext db, Guid motorcycleId) =>
        db.OdometerReadings.AsNoTracking().Where(r => r.MotorcycleId == motorcycleId
            && !db.OdometerReadings.Any(later => later.SupersedesId == r.Id));

    /// <summary>The instrument of that day; before the first, the first, whose day the rules then hold against it.</summary>
    private static async Task<Odometer> InstrumentOf(
        WorkshopDbContext db, Guid motorcycleId, Typed typed, CancellationToken ct)
    {
        var instruments = await db.Odometers.AsNoTracking()
            .Where(o => o.MotorcycleId == motorcycleId).OrderBy(o => o.FittedOn).ToListAsync(ct);
        return instruments.LastOrDefault(o => o.FittedOn <= typed.ReadOn) ?? instruments[0];
    }
}
