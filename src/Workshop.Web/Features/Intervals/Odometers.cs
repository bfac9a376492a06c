using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Intervals;

/// <summary>The odometers of one motorcycle, and what counts of what was read from them.</summary>
/// <param name="Unit">Of the one that it has now.</param>
internal sealed record Odometers(OdometerUnit Unit, OdometerTrack Track, StandingReadings Standing)
{
    /// <summary>Of those among the motorcycles that have one.</summary>
    public static async Task<IReadOnlyDictionary<Guid, Odometers>> Load(
        WorkshopDbContext db, IReadOnlyList<Guid> motorcycles, CancellationToken ct)
    {
        var instruments = (await db.Odometers.AsNoTracking().Where(o => motorcycles.Contains(o.MotorcycleId)).ToListAsync(ct))
            .GroupBy(o => o.MotorcycleId);
        var readings = (await db.OdometerReadings.AsNoTracking().Where(r => motorcycles.Contains(r.MotorcycleId)).ToListAsync(ct))
            .ToLookup(r => r.MotorcycleId);
        return instruments.ToDictionary(of => of.Key, of => Of([.. of], [.. readings[of.Key]]));
    }

    private static Odometers Of(IReadOnlyList<Odometer> instruments, IReadOnlyCollection<OdometerReading> readings)
    {
        var first = instruments.MinBy(o => o.FittedOn)!;
        var standing = StandingReadings.Of(readings);
        return new Odometers(
            (instruments.FirstOrDefault(o => o.RemovedOn is null) ?? first).Unit,
            OdometerTrack.Of(
                new OdometerPoint(first.FittedOn, first.Offset),
                standing.Readings.Select(r => new OdometerPoint(r.ReadOn, r.Distance))),
            standing);
    }
}
