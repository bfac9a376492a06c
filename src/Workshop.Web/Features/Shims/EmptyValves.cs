using Microsoft.EntityFrameworkCore;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Shims;

/// <summary>Valves of a card whose shim came out, by the ledger, and that have got no other since.</summary>
internal static class EmptyValves
{
    public static async Task<IReadOnlyList<ValveKey>> Of(WorkshopDbContext db, int number, CancellationToken ct) =>
        [.. (await db.StockMovements.AsNoTracking()
                .Where(m => m.JobCardNumber == number && m.Valve != null && (m.Kind == MovementKind.CameOut || m.Kind == MovementKind.Issued))
                .Select(m => new { m.Id, m.MovedAt, Valve = m.Valve!.Value, m.Kind }).ToListAsync(ct))
            .GroupBy(m => m.Valve)
            .Where(g => g.OrderBy(m => m.MovedAt).ThenBy(m => m.Kind == MovementKind.Issued).Last().Kind == MovementKind.CameOut)
            .Select(g => g.Key).Order()];
}
