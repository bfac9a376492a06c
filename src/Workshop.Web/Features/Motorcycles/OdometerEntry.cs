using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Intervals;
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

        /// <summary>It may look like a slip: somebody says, with that reason, that it is right.</summary>
        public bool Confirmed { get; init; }
    }

    /// <summary>What stands of one motorcycle's odometers: read once, however many entries follow.</summary>
    /// <param name="Today">The workshop's day.</param>
    /// <param name="Instruments">Of the motorcycle, in order of the day on which each was fitted; at least one.</param>
    /// <param name="Standing">The readings that no correction has superseded; what is decided to be added joins them.</param>
    public sealed record Known(LocalDate Today, IReadOnlyList<Odometer> Instruments, List<OdometerReading> Standing);

    /// <summary>The reading as a row that waits to be saved; the one that stands where the same was typed before.</summary>
    public static async Task<Outcome<OdometerReading>> Add(
        WorkshopDbContext db, Guid motorcycleId, Typed typed, Actor actor, IClock clock, CancellationToken ct)
    {
        await MotorcycleLock.Take(db, motorcycleId, ct);
        var now = clock.GetCurrentInstant();
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        var instruments = await db.Odometers.AsNoTracking()
            .Where(o => o.MotorcycleId == motorcycleId).OrderBy(o => o.FittedOn).ToListAsync(ct);

        // Rows that this use case has added already count as well, or a batch could run backwards inside itself.
        var pending = db.ChangeTracker.Entries<OdometerReading>()
            .Where(e => e.State == EntityState.Added && e.Entity.MotorcycleId == motorcycleId)
            .Select(e => e.Entity);
        var standing = (await Standing(db, motorcycleId).ToListAsync(ct)).Concat(pending).ToList();
        return Decide(new Known(today, instruments, standing), typed, actor, now).Then<OdometerReading>(reading =>
        {
            if (!standing.Contains(reading))
            {
                db.OdometerReadings.Add(reading);
            }

            return reading;
        });
    }

    /// <summary>
    /// Judges one reading by what stands: a new row, the one that stands where the same was typed before, or the refusal.
    /// Adds nothing anywhere.
    /// </summary>
    public static Outcome<OdometerReading> Decide(Known known, Typed typed, Actor actor, Instant now)
    {
        if (OdometerRules.JudgeDay(typed.DayField, typed.ReadOn, known.Today) is { } notYet)
        {
            return notYet;
        }

        // Before the first instrument the first, whose day the rules then hold against the reading.
        var instrument = known.Instruments.LastOrDefault(o => o.FittedOn <= typed.ReadOn) ?? known.Instruments[0];
        var others = StandingReadings.NotOverruled([.. known.Standing.Where(r => r.OdometerId == instrument.Id && r.Id != typed.Supersedes?.Id)]);
        var same = others.FirstOrDefault(
            r => r.ReadOn == typed.ReadOn && r.Count == typed.Count && r.JobCardNumber == typed.JobCardNumber);
        if (same is not null && typed.Supersedes is null)
        {
            return same;
        }

        if (OdometerRules.Judge(typed.Field, typed.Count, typed.ReadOn, instrument, others, typed.Confirmed) is { } problem)
        {
            return problem;
        }

        return new OdometerReading
        {
            Id = NewId.At(now),
            OdometerId = instrument.Id,
            MotorcycleId = instrument.MotorcycleId,
            ReadOn = typed.ReadOn,
            Count = typed.Count,
            Unit = instrument.Unit,
            Distance = instrument.DistanceAt(typed.Count),
            JobCardNumber = typed.JobCardNumber ?? typed.Supersedes?.JobCardNumber,
            SupersedesId = typed.Supersedes?.Id,
            ReasonRemarkId = typed.ReasonRemarkId,
            Confirmed = typed.Confirmed,
            MeasuredBy = actor.PersonId,
            EnteredBy = actor.PersonId,
            EnteredAt = now,
        };
    }

    /// <summary>The readings that no correction has superseded.</summary>
    public static IQueryable<OdometerReading> Standing(WorkshopDbContext db, Guid motorcycleId) =>
        db.OdometerReadings.AsNoTracking().Where(r => r.MotorcycleId == motorcycleId
            && !db.OdometerReadings.Any(later => later.SupersedesId == r.Id));
}
