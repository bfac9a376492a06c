using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Kits;

/// <summary>One part and what lies of it where. Shims and used parts are no matter of kits.</summary>
internal sealed record PartOnShelves(Part Part, IReadOnlyList<ShelfStock> Shelves)
{
    public decimal OnHand => Shelves.Sum(s => s.OnHand);

    public decimal ReservedForCard => Shelves.Sum(s => s.ReservedForCard);
}

/// <summary>Reads what the stores have of the parts of a kit, with what one card holds of it.</summary>
internal static class Shelves
{
    /// <param name="partCodes">Codes that the stores do not know are left out of the answer.</param>
    /// <param name="cardNumber">Absent for a visit that is not booked yet: it holds nothing.</param>
    public static async Task<IReadOnlyDictionary<string, PartOnShelves>> Read(
        WorkshopDbContext db, IReadOnlyCollection<string> partCodes, int? cardNumber, CancellationToken ct)
    {
        var parts = await db.Parts.AsNoTracking().Where(p => partCodes.Contains(p.Code)).ToListAsync(ct);
        var ids = parts.Select(p => p.Id).ToList();
        var balances = await db.StockBalances.AsNoTracking()
            .Where(b => ids.Contains(b.PartId) && b.Thickness == null && b.Condition == StockCondition.New)
            .ToListAsync(ct);
        var held = await OfCard(db, cardNumber)
            .Where(m => ids.Contains(m.PartId))
            .GroupBy(m => new { m.PartId, m.PlaceId })
            .Select(g => new { g.Key, Quantity = g.Sum(m => m.ReservedChange) })
            .ToDictionaryAsync(g => (g.Key.PartId, g.Key.PlaceId), g => g.Quantity, ct);
        var shelves = balances.ToLookup(b => b.PartId, b => new ShelfStock(
            b.PartId, b.PlaceId, b.OnHand, b.Reserved, held.GetValueOrDefault((b.PartId, b.PlaceId))));
        return parts.ToDictionary(p => p.Code, p => new PartOnShelves(p, [.. shelves[p.Id]]), StringComparer.Ordinal);
    }

    /// <summary>
    /// The same for a write: the parts' rows are locked first, in one order, so that two cards never count on the same piece.
    /// The balances themselves belong to the database's trigger.
    /// </summary>
    public static async Task<IReadOnlyDictionary<string, PartOnShelves>> ReadToChange(
        WorkshopDbContext db, IReadOnlyCollection<string> partCodes, int cardNumber, CancellationToken ct)
    {
        var codes = partCodes.ToArray();
        await db.Database.ExecuteSqlAsync(
            $"select 1 from parts where code = any({codes}) order by id for no key update", ct);
        return await Read(db, codes, cardNumber, ct);
    }

    /// <summary>Codes of the parts that a card holds now.</summary>
    public static async Task<IReadOnlyList<string>> CodesHeld(WorkshopDbContext db, int cardNumber, CancellationToken ct) =>
        await (from movement in OfCard(db, cardNumber)
               join part in db.Parts on movement.PartId equals part.Id
               group movement by part.Code into moved
               where moved.Sum(m => m.ReservedChange) != 0
               select moved.Key).ToListAsync(ct);

    /// <summary>The movements that a card caused, of parts that a kit may hold.</summary>
    public static IQueryable<StockMovement> OfCard(WorkshopDbContext db, int? cardNumber) =>
        db.StockMovements.AsNoTracking().Where(m => m.JobCardNumber == cardNumber && cardNumber != null
            && m.Thickness == null && m.Condition == StockCondition.New);
}
