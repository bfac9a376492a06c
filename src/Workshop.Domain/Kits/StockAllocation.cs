using Workshop.Domain.Stores;

namespace Workshop.Domain.Kits;

/// <summary>What lies of one part at one place, and how much of it is held for which card.</summary>
/// <param name="Reserved">For all cards together; may exceed what is on hand when others took it without asking.</param>
/// <param name="ReservedForCard">Of that, for the card in question.</param>
public sealed record ShelfStock(Guid PartId, Guid PlaceId, decimal OnHand, decimal Reserved, decimal ReservedForCard)
{
    /// <summary>What nobody has reserved.</summary>
    public decimal Free => Math.Max(0, OnHand - Reserved);
}

/// <summary>One movement to write.</summary>
public sealed record StockChange(Guid PartId, Guid PlaceId, MovementKind Kind, decimal OnHandChange, decimal ReservedChange);

/// <summary>Decides which movements reserve, issue and release the parts of a kit. One part at a time; pure.</summary>
public static class StockAllocation
{
    /// <summary>
    /// Brings the card's reservation of one part to <paramref name="wanted"/>, in the part's unit: takes what is free, most
    /// free place first, and no more; lets go what it no longer wants. Nothing changes when it is there already.
    /// </summary>
    public static IReadOnlyList<StockChange> Reserve(decimal wanted, IReadOnlyList<ShelfStock> shelves)
    {
        ArgumentNullException.ThrowIfNull(shelves);
        ArgumentOutOfRangeException.ThrowIfNegative(wanted);
        var changes = new List<StockChange>();
        var missing = wanted - shelves.Sum(s => s.ReservedForCard);
        foreach (var shelf in shelves.OrderByDescending(s => s.Free).ThenBy(s => s.PlaceId))
        {
            var take = Math.Min(missing, shelf.Free);
            if (take > 0)
            {
                changes.Add(new StockChange(shelf.PartId, shelf.PlaceId, MovementKind.Reserved, 0, take));
                missing -= take;
            }
        }

        foreach (var shelf in shelves.OrderBy(s => s.ReservedForCard).ThenBy(s => s.PlaceId))
        {
            var letGo = Math.Min(-missing, shelf.ReservedForCard);
            if (letGo > 0)
            {
                changes.Add(new StockChange(shelf.PartId, shelf.PlaceId, MovementKind.Released, 0, -letGo));
                missing += letGo;
            }
        }

        return changes;
    }

    /// <summary>
    /// Takes <paramref name="quantity"/> of one part, in its unit, for a card: from where it is reserved first, then from
    /// where most lies, and drops the rest of the reservation. What was used is used, so the reservations of other cards do
    /// not hold it back; only what is not there at all is missing.
    /// </summary>
    /// <returns>The movements, and how much is missing; with anything missing the movements must not be written.</returns>
    public static (IReadOnlyList<StockChange> Changes, decimal Missing) Issue(
        decimal quantity, IReadOnlyList<ShelfStock> shelves)
    {
        ArgumentNullException.ThrowIfNull(shelves);
        ArgumentOutOfRangeException.ThrowIfNegative(quantity);
        var changes = new List<StockChange>();
        var missing = quantity;
        foreach (var shelf in shelves
            .OrderByDescending(s => Math.Min(s.ReservedForCard, s.OnHand)).ThenByDescending(s => s.OnHand).ThenBy(s => s.PlaceId))
        {
            var take = Math.Min(missing, shelf.OnHand);
            var used = Math.Min(take, shelf.ReservedForCard);
            if (take > 0)
            {
                changes.Add(new StockChange(shelf.PartId, shelf.PlaceId, MovementKind.Issued, -take, -used));
                missing -= take;
            }

            if (shelf.ReservedForCard > used)
            {
                changes.Add(new StockChange(
                    shelf.PartId, shelf.PlaceId, MovementKind.Released, 0, used - shelf.ReservedForCard));
            }
        }

        return (changes, missing);
    }

    /// <summary>
    /// How much of <paramref name="wanted"/> a card cannot count on: what is there less what other cards have reserved.
    /// Where more is reserved than is there, each of them is short, since nobody knows whose it is.
    /// </summary>
    public static decimal ShortOf(decimal wanted, IReadOnlyList<ShelfStock> shelves)
    {
        ArgumentNullException.ThrowIfNull(shelves);
        return Math.Max(0, wanted - shelves.Sum(s => Math.Max(0, s.OnHand - (s.Reserved - s.ReservedForCard))));
    }
}
