using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Clearances;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Shims;

namespace Workshop.Web.Features.Clearances;

/// <summary>Whether the readings as left of a card are open.</summary>
internal static class AsLeft
{
    /// <summary>What stands in the way, in sentences; empty where as left is open.</summary>
    /// <param name="with">Two turns that are about to be confirmed.</param>
    public static async Task<IReadOnlyList<string>> Against(
        WorkshopDbContext db, OpenCard open, CardMeasurements measured, CancellationToken ct, HandTurn? with = null)
    {
        var number = open.Card.Number;
        return AsLeftGate.Against(
            open.Specification, open.UnderWay, measured.Shims, measured.Events,
            await db.FastenerTicks.AsNoTracking().Where(t => t.JobCardNumber == number).ToListAsync(ct),
            with is not null ? [with] : await db.HandTurns.AsNoTracking().Where(t => t.JobCardNumber == number).ToListAsync(ct),
            await EmptyValves.Of(db, number, ct));
    }
}
