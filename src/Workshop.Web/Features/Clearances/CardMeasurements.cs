using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Clearances;
using Workshop.Domain.Shims;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Clearances;

/// <summary>All that was measured and done at the valves on one card, superseded rows included, in order of entry.</summary>
internal sealed record CardMeasurements(
    List<ClearanceReading> Readings, List<ShimObservation> Shims, List<ValveEvent> Events)
{
    public static async Task<CardMeasurements> Load(WorkshopDbContext db, int number, CancellationToken ct) => new(
        await db.ClearanceReadings.AsNoTracking().Where(r => r.JobCardNumber == number).OrderBy(r => r.Id).ToListAsync(ct),
        await db.ShimObservations.AsNoTracking().Where(s => s.JobCardNumber == number).OrderBy(s => s.Id).ToListAsync(ct),
        await db.ValveEvents.AsNoTracking().Where(e => e.JobCardNumber == number).OrderBy(e => e.Id).ToListAsync(ct));
}
