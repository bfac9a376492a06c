using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Kits;

/// <summary>One part and what lies of it where, lot by lot. Shims and used parts are no matter of kits.</summary>
internal sealed record PartOnShelves(Part Part, IReadOnlyList<ShelfStock> Shelves)
{
    public decimal OnHand => Shelves.Sum(s => s.OnHand);

    public decimal Expired => Shelves.Where(s => s.Expired).Sum(s => s.OnHand);

    public decimal ReservedForCard => Shelves.Sum(s => s.ReservedForCard);

    public decimal IssuedToCard => Shelves.Sum(s => s.IssuedToCard);

    public decimal Free => Shelves.Sum(s => s.Free);
}

/// <summary>Reads what the stores have of the parts of a kit, with what one card holds of it.</summary>
internal static class Shelves
{
    /// <param name="partIds">Of parts as they are now, none that was merged into another.</param>
    /// <param name="cardNumber">Absent for a visit that is not booked yet: it holds nothing.</param>
    /// <param name="usedOn">The day of use: lots that end before it are expired.</param>
    public static async Task<IReadOnlyDictionary<Guid, PartOnShelves>> Read(
        WorkshopDbContext db, IReadOnlyCollection<Guid> partIds, int? cardNumber, LocalDate usedOn, CancellationToken ct)
    {
        var parts = await db.Parts.AsNoTracking().Where(p => partIds.Contains(p.Id)).ToListAsync(ct);
        var balances = await (
            from balance in db.StockBalances.AsNoTracking()
            join lot in db.StockLots on balance.LotId equals lot.Id into lots
            from lot in lots.DefaultIfEmpty()
            where partIds.Contains(balance.PartId) && balance.Thickness == null && balance.Condition == StockCondition.New
            select new { Balance = balance, ExpiresOn = lot == null ? null : lot.ExpiresOn }).ToListAsync(ct);
        var held = await HeldByCard(db, cardNumber).Where(m => partIds.Contains(m.PartId))
            .GroupBy(m => new { m.PartId, m.Movement.PlaceId, m.Movement.LotId })
            .Select(g => new
            {
                g.Key,
                Reserved = g.Sum(m => m.Movement.ReservedChange),
                Issued = -g.Where(m => m.Movement.Kind == MovementKind.Issued || m.Movement.Kind == MovementKind.Returned)
                    .Sum(m => m.Movement.OnHandChange),
            })
            .ToDictionaryAsync(g => (g.Key.PartId, g.Key.PlaceId, g.Key.LotId), ct);
        var shelves = balances.ToLookup(b => b.Balance.PartId, b =>
        {
            var own = held.GetValueOrDefault((b.Balance.PartId, b.Balance.PlaceId, b.Balance.LotId));
            return new ShelfStock(b.Balance.PartId, b.Balance.PlaceId, b.Balance.OnHand, b.Balance.Reserved, own?.Reserved ?? 0)
            {
                LotId = b.Balance.LotId, ExpiresOn = b.ExpiresOn, Expired = b.ExpiresOn < usedOn, IssuedToCard = own?.Issued ?? 0,
            };
        });
        return parts.ToDictionary(p => p.Id, p => new PartOnShelves(p, [.. shelves[p.Id]]));
    }

    /// <summary>
    /// The same for a write: the parts' rows are locked first, in one order, so that two cards never count on the same piece.
    /// The balances themselves belong to the database's trigger.
    /// </summary>
    public static async Task<IReadOnlyDictionary<Guid, PartOnShelves>> ReadToChange(
        WorkshopDbContext db, IReadOnlyCollection<Guid> partIds, int cardNumber, LocalDate usedOn, CancellationToken ct)
    {
        var ids = partIds.ToArray();
        await db.Database.ExecuteSqlAsync($"select 1 from parts where id = any({ids}) order by id for no key update", ct);
        return await Read(db, ids, cardNumber, usedOn, ct);
    }

    /// <summary>The parts of which a card holds something or has something on its bench.</summary>
    public static async Task<IReadOnlyList<Guid>> TouchedBy(WorkshopDbContext db, int cardNumber, CancellationToken ct) =>
        await HeldByCard(db, cardNumber).GroupBy(m => m.PartId)
            .Where(g => g.Sum(m => m.Movement.ReservedChange) != 0
                || g.Where(m => m.Movement.Kind == MovementKind.Issued || m.Movement.Kind == MovementKind.Returned).Sum(m => m.Movement.OnHandChange) != 0)
            .Select(g => g.Key).ToListAsync(ct);

    /// <summary>The movements that a card caused, of parts that a kit may hold.</summary>
    public static IQueryable<StockMovement> OfCard(WorkshopDbContext db, int? cardNumber) =>
        db.StockMovements.AsNoTracking().Where(m => m.JobCardNumber == cardNumber && cardNumber != null
            && m.Thickness == null && m.Condition == StockCondition.New);

    /// <summary>The same under the part that each is now: what was taken of a part stays taken when it is merged into another.</summary>
    private static IQueryable<MovementOfPart> HeldByCard(WorkshopDbContext db, int? cardNumber) =>
        from movement in OfCard(db, cardNumber)
        join part in db.Parts on movement.PartId equals part.Id
        select new MovementOfPart { PartId = part.MergedIntoId ?? part.Id, Movement = movement };

    private sealed class MovementOfPart
    {
        public required Guid PartId { get; init; }

        public required StockMovement Movement { get; init; }
    }
}
