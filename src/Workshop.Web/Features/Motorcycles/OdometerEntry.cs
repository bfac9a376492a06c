using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>
/// The one way in which an odometer reading gets in: typed at the counter, at check-in, at sign-off or from an old worksheet.
/// Adds the row; the use case saves.
/// </summary>
internal static class OdometerEntry
{
    /// <param name="Field">The field's name as the caller wrote it, for the sentence of a refusal.</param>
    /// <param name="Count">Whole units of the instrument.</param>
    public sealed record Typed(string Field, int Count, LocalDate ReadOn, int? JobCardNumber = null);

    public static async Task<Outcome<OdometerReading>> Add(
        WorkshopDbContext db, Guid motorcycleId, Typed typed, Actor actor, IClock clock, CancellationToken ct)
    {
        var instrument = await db.Odometers.AsNoTracking()
            .Where(o => o.MotorcycleId == motorcycleId && o.FittedOn <= typed.ReadOn
                && (o.RemovedOn == null || typed.ReadOn < o.RemovedOn))
            .OrderByDescending(o => o.FittedOn)
            .FirstOrDefaultAsync(ct)
            ?? await db.Odometers.AsNoTracking().Where(o => o.MotorcycleId == motorcycleId)
                .OrderBy(o => o.FittedOn).FirstAsync(ct);

        // Rows that this use case has added already count as well, or a batch could run backwards inside itself.
        var standing = await Standing(db, motorcycleId).Where(r => r.OdometerId == instrument.Id).ToListAsync(ct);
        var pending = db.ChangeTracker.Entries<OdometerReading>()
            .Where(e => e.State == EntityState.Added && e.Entity.OdometerId == instrument.Id)
            .Select(e => e.Entity);
        if (OdometerRules.Judge(typed.Field, typed.Count, typed.ReadOn, instrument, standing.Concat(pending)) is { } problem)
        {
            return problem;
        }

        var reading = new OdometerReading
        {
            Id = NewId.At(clock),
            OdometerId = instrument.Id,
            MotorcycleId = motorcycleId,
            ReadOn = typed.ReadOn,
            Count = typed.Count,
            Unit = instrument.Unit,
            Distance = instrument.DistanceAt(typed.Count),
            JobCardNumber = typed.JobCardNumber,
            MeasuredBy = actor.PersonId,
            EnteredBy = actor.PersonId,
            EnteredAt = clock.GetCurrentInstant(),
        };
        db.OdometerReadings.Add(reading);
        return reading;
    }

    /// <summary>The readings that no correction has superseded.</summary>
    public static IQueryable<OdometerReading> Standing(WorkshopDbContext db, Guid motorcycleId) =>
        db.OdometerReadings.AsNoTracking().Where(r => r.MotorcycleId == motorcycleId
            && !db.OdometerReadings.Any(later => later.SupersedesId == r.Id));
}
