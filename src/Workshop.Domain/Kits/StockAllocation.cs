using NodaTime;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Kits;

/// <summary>What lies of one part at one place, of one lot, and how much of it is held for which card.</summary>
/// <param name="Reserved">For all cards together; may exceed what is on hand when others took it without asking.</param>
/// <param name="ReservedForCard">Of that, for the card in question.</param>
public sealed record ShelfStock(Guid PartId, Guid PlaceId, decimal OnHand, decimal Reserved, decimal ReservedForCard)
{
    /// <summary>Absent where the part is not kept by lot.</summary>
    public Guid? LotId { get; init; }

    /// <summary>The last day on which the lot may be used; absent where it keeps.</summary>
    public LocalDate? ExpiresOn { get; init; }

    /// <summary>The lot is past its day when it would be used: never offered, never taken.</summary>
    public bool Expired { get; init; }

    /// <summary>Taken from here to the card, less what came back.</summary>
    public decimal IssuedToCard { get; init; }

    /// <summary>What nobody has reserved.</summary>
    public decimal Free => Expired ? 0 : Math.Max(0, OnHand - Reserved);

    /// <summary>What the card may take: what is there less what other cards hold.</summary>
    public decimal ForCard => Expired ? 0 : Math.Max(0, OnHand - (Reserved - ReservedForCard));

    /// <summary>What is reserved for the card and lies there: whoever picks first has it, should others have reserved it, too.</summary>
    public decimal HeldAndThere => Expired ? 0 : Math.Min(ReservedForCard, OnHand);

    /// <summary>As it is after a movement of this card.</summary>
    public ShelfStock After(StockChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return this with
        {
            OnHand = OnHand + change.OnHandChange,
            Reserved = Reserved + change.ReservedChange,
            ReservedForCard = ReservedForCard + change.ReservedChange,
            IssuedToCard = IssuedToCard - change.OnHandChange,
        };
    }
}

/// <summary>One movement to write.</summary>
public sealed record StockChange(Guid PartId, Guid PlaceId, Guid? LotId, MovementKind Kind, decimal OnHandChange, decimal ReservedChange);

/// <summary>
/// Decides which movements reserve, issue, return and release the parts of a kit. One part at a time; pure. What expires first
/// goes first, and what has expired never goes.
/// </summary>
public static class StockAllocation
{
    /// <summary>
    /// Brings the card's reservation of one part to <paramref name="wanted"/>, in the part's unit: takes what is free, and no more;
    /// lets go what it no longer wants and what has expired. Nothing changes when it is there already.
    /// </summary>
    public static IReadOnlyList<StockChange> Reserve(decimal wanted, IReadOnlyList<ShelfStock> shelves)
    {
        ArgumentNullException.ThrowIfNull(shelves);
        ArgumentOutOfRangeException.ThrowIfNegative(wanted);
        var changes = new List<StockChange>();
        changes.AddRange(shelves.Where(s => s.Expired && s.ReservedForCard > 0).Select(s => Release(s, s.ReservedForCard)));
        var missing = wanted - shelves.Where(s => !s.Expired).Sum(s => s.ReservedForCard);
        foreach (var shelf in InOrder(shelves).ThenByDescending(s => s.Free).ThenBy(s => s.PlaceId).ThenBy(s => s.LotId))
        {
            var take = Math.Min(missing, shelf.Free);
            if (take > 0)
            {
                changes.Add(Change(shelf, MovementKind.Reserved, 0, take));
                missing -= take;
            }
        }

        // The other way round: what expires last is let go first.
        foreach (var shelf in InOrder(shelves).ThenByDescending(s => s.ReservedForCard).ThenBy(s => s.PlaceId).ThenBy(s => s.LotId).Reverse())
        {
            var letGo = Math.Min(-missing, shelf.ReservedForCard);
            if (letGo > 0)
            {
                changes.Add(Release(shelf, letGo));
                missing += letGo;
            }
        }

        return changes;
    }

    /// <summary>
    /// Takes <paramref name="quantity"/> of one part to the bench of a card before it is used: what is reserved for it first, then
    /// what nobody holds. Other cards' reservations hold it back.
    /// </summary>
    /// <returns>The movements, and how much is missing: those movements may be written without the rest.</returns>
    public static (IReadOnlyList<StockChange> Changes, decimal Missing) Pick(decimal quantity, IReadOnlyList<ShelfStock> shelves)
    {
        ArgumentNullException.ThrowIfNull(shelves);
        ArgumentOutOfRangeException.ThrowIfNegative(quantity);
        var changes = new List<StockChange>();
        var missing = quantity;
        foreach (var (shelf, most) in InOrder(shelves).ThenBy(s => s.PlaceId).ThenBy(s => s.LotId)
            .Select(s => (s, Most: s.HeldAndThere))
            .Concat(InOrder(shelves).ThenByDescending(s => s.Free).ThenBy(s => s.PlaceId).ThenBy(s => s.LotId)
                .Select(s => (s, Most: s.Free))))
        {
            var take = Math.Min(missing, most);
            if (take > 0)
            {
                var held = shelf.ReservedForCard + changes.Where(c => IsOf(c, shelf)).Sum(c => c.ReservedChange);
                changes.Add(Change(shelf, MovementKind.Issued, -take, -Math.Min(take, held)));
                missing -= take;
            }
        }

        return (changes, missing);
    }

    /// <summary>
    /// Squares one part of a card that ends with what was used of it: what is on the bench beyond that goes back to its place, what
    /// expires last first; what was used beyond it is taken; the rest of the reservation is dropped. What was used is used, so
    /// other cards' reservations do not hold it back: only what is not there, or has expired, is missing.
    /// </summary>
    /// <param name="used">In the part's unit; 0 where the visit does not take place.</param>
    /// <param name="shelves">All that lies of the part.</param>
    /// <returns>The movements, and how much is missing; with anything missing the movements must not be written.</returns>
    public static (IReadOnlyList<StockChange> Changes, decimal Missing) Settle(decimal used, IReadOnlyList<ShelfStock> shelves)
    {
        ArgumentNullException.ThrowIfNull(shelves);
        ArgumentOutOfRangeException.ThrowIfNegative(used);
        var changes = new List<StockChange>(Return(shelves.Sum(s => s.IssuedToCard) - used, shelves));
        var missing = Math.Max(0, used - shelves.Sum(s => s.IssuedToCard));
        foreach (var shelf in shelves
            .OrderByDescending(s => Math.Min(s.ReservedForCard, s.OnHand) > 0)
            .ThenBy(s => s.ExpiresOn ?? LocalDate.MaxIsoValue).ThenByDescending(s => s.OnHand).ThenBy(s => s.PlaceId).ThenBy(s => s.LotId))
        {
            var take = shelf.Expired ? 0 : Math.Min(missing, shelf.OnHand);
            var held = Math.Min(take, shelf.ReservedForCard);
            if (take > 0)
            {
                changes.Add(Change(shelf, MovementKind.Issued, -take, -held));
                missing -= take;
            }

            if (shelf.ReservedForCard > held)
            {
                changes.Add(Release(shelf, shelf.ReservedForCard - held));
            }
        }

        return (changes, missing);
    }

    /// <summary>Puts back so much of what was taken to the card, each to where it came from; what expires last first.</summary>
    public static IReadOnlyList<StockChange> Return(decimal quantity, IReadOnlyList<ShelfStock> shelves)
    {
        ArgumentNullException.ThrowIfNull(shelves);
        var changes = new List<StockChange>();
        foreach (var shelf in shelves.OrderByDescending(s => s.ExpiresOn ?? LocalDate.MaxIsoValue).ThenBy(s => s.PlaceId).ThenBy(s => s.LotId))
        {
            var back = Math.Min(quantity, shelf.IssuedToCard);
            if (back > 0)
            {
                changes.Add(Change(shelf, MovementKind.Returned, back, 0));
                quantity -= back;
            }
        }

        return changes;
    }

    /// <summary>
    /// How much of <paramref name="wanted"/> a card cannot count on: beside what is on its bench, what is there less what other cards
    /// have reserved. Where more is reserved than is there, each of them is short, since nobody knows whose it is.
    /// </summary>
    public static decimal ShortOf(decimal wanted, IReadOnlyList<ShelfStock> shelves)
    {
        ArgumentNullException.ThrowIfNull(shelves);
        return Math.Max(0, wanted - shelves.Sum(s => s.IssuedToCard + s.ForCard));
    }

    /// <summary>The shelves as they are once the movements are written.</summary>
    public static IReadOnlyList<ShelfStock> After(IReadOnlyList<ShelfStock> shelves, IReadOnlyList<StockChange> changes) =>
        [.. shelves.Select(shelf => changes.Where(c => IsOf(c, shelf)).Aggregate(shelf, (s, c) => s.After(c)))];

    private static IOrderedEnumerable<ShelfStock> InOrder(IEnumerable<ShelfStock> shelves) =>
        shelves.Where(s => !s.Expired).OrderBy(s => s.ExpiresOn ?? LocalDate.MaxIsoValue);

    private static bool IsOf(StockChange change, ShelfStock shelf) =>
        (change.PartId, change.PlaceId, change.LotId) == (shelf.PartId, shelf.PlaceId, shelf.LotId);

    private static StockChange Release(ShelfStock shelf, decimal quantity) => Change(shelf, MovementKind.Released, 0, -quantity);

    private static StockChange Change(ShelfStock shelf, MovementKind kind, decimal onHand, decimal reserved) =>
        new(shelf.PartId, shelf.PlaceId, shelf.LotId, kind, onHand, reserved);
}
