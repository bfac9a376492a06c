using NodaTime;
using Workshop.Domain.Kits;

namespace Workshop.Domain.Orders;

/// <summary>What lies there and expires before anybody asks for it.</summary>
public static class UnusedLots
{
    /// <summary>
    /// Of lots that end before a day, what is left of them at their end: what expires first is used first. So much of what is there is
    /// no use to whoever asks from that day on.
    /// </summary>
    /// <param name="until">Lots that last until it are not lost by then.</param>
    /// <param name="lots">By last day; what keeps may be among them.</param>
    /// <param name="askedUntil">How much is asked for from today to the end of a day; never falls.</param>
    /// <returns>0 or above, in the part's unit, rounded up to whole ones.</returns>
    public static decimal By(LocalDate until, IReadOnlyList<LotQuantity> lots, Func<LocalDate, decimal> askedUntil)
    {
        ArgumentNullException.ThrowIfNull(lots);
        ArgumentNullException.ThrowIfNull(askedUntil);
        var (used, unused) = (0m, 0m);
        foreach (var lot in lots.Where(l => !l.LastsUntil(until)).OrderBy(l => l.ExpiresOn))
        {
            var taken = Math.Clamp(askedUntil(lot.ExpiresOn!.Value) - used, 0, lot.Quantity);
            used += taken;
            unused += lot.Quantity - taken;
        }

        return Math.Ceiling(unused);
    }
}
