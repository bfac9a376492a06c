using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Shims;

/// <summary>Movements of shims: one row moves one shim, and the database's trigger moves it as the row is added.</summary>
internal static class ShimLedger
{
    /// <summary>
    /// Adds movements and saves them in the order in which things can happen: out of valves, then onto shelves or away, then
    /// into valves. Rows of one save reach the database in no order of ours.
    /// </summary>
    public static async Task Write(WorkshopDbContext db, IEnumerable<StockMovement> movements, CancellationToken ct)
    {
        foreach (var wave in movements.GroupBy(m => WaveOf(m.Kind)).OrderBy(g => g.Key))
        {
            db.StockMovements.AddRange(wave);
            await db.SaveChangesAsync(ct);
        }
    }

    /// <summary>So many new shims of one thickness come in.</summary>
    public static IReadOnlyList<StockMovement> Receipt(
        Guid partId, Guid placeId, ShimThickness thickness, ShimThickness? nominal, int quantity, Guid movedBy, Instant now,
        decimal? unitCost = null, Guid? orderLineId = null) =>
        [.. Enumerable.Range(0, quantity).Select(_ => new StockMovement
        {
            Id = NewId.At(now),
            PartId = partId,
            PlaceId = placeId,
            Thickness = thickness,
            Nominal = nominal,
            ShimId = NewId.At(now),
            Kind = MovementKind.Received,
            OnHandChange = 1,
            ReservedChange = 0,
            UnitCost = unitCost,
            OrderLineId = orderLineId,
            MovedBy = movedBy,
            MovedAt = now,
        })];

    /// <summary>The order of what one moment brings: out of a valve first, into a valve last, scrapped after it was put away.</summary>
    public static int WaveOf(MovementKind kind) => kind switch
    {
        MovementKind.CameOut => 0,
        MovementKind.Scrapped => 2,
        MovementKind.Issued => 3,
        _ => 1,
    };
}
