using NodaTime;

namespace Workshop.Domain.Stores;

/// <summary>What one job card has reserved of one part, at one place, of one lot.</summary>
/// <param name="StartsAt">When its visit is to begin.</param>
/// <param name="Quantity">In the part's unit, above 0.</param>
public sealed record HeldForCard(int CardNumber, Instant StartsAt, decimal Quantity);

/// <summary>Whose reservation gives way when less is there than is reserved.</summary>
public static class GivingWay
{
    /// <summary>
    /// Takes <paramref name="quantity"/> from what is held, from the visit that begins last on: whoever comes last has most time to get
    /// another. Takes no more than is held.
    /// </summary>
    public static IReadOnlyList<HeldForCard> Take(decimal quantity, IReadOnlyList<HeldForCard> held)
    {
        ArgumentNullException.ThrowIfNull(held);
        ArgumentOutOfRangeException.ThrowIfNegative(quantity);
        var taken = new List<HeldForCard>();
        foreach (var card in held.OrderByDescending(h => h.StartsAt).ThenByDescending(h => h.CardNumber))
        {
            var take = Math.Min(quantity, card.Quantity);
            if (take > 0)
            {
                taken.Add(card with { Quantity = take });
                quantity -= take;
            }
        }

        return taken;
    }
}
