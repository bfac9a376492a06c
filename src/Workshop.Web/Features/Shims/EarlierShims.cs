using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Shims;

/// <summary>The shim that each valve of a visit's engine had when the visit began, where an earlier one tells.</summary>
internal static class EarlierShims
{
    public static async Task<IReadOnlyDictionary<ValveKey, ShimThickness>> Read(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        // Rows of this card are left out by its number; what came later, on another card, by the time of this check-in.
        var (engine, number) = (open.Card.EngineId, open.Card.Number);
        var before = open.CheckIn?.CheckedInAt ?? Instant.MaxValue;
        return MeasuredValves.ShimsBefore(
            await db.ShimObservations.AsNoTracking()
                .Where(s => s.EngineId == engine && s.JobCardNumber != number && s.MeasuredAt <= before).ToListAsync(ct),
            await db.ValveEvents.AsNoTracking()
                .Where(e => e.EngineId == engine && e.JobCardNumber != number && e.HappenedAt <= before).ToListAsync(ct));
    }
}
