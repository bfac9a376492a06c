using NodaTime;

namespace Workshop.Domain.Kits;

/// <summary>What a visit that is to come lacks of one part before anything is shared out.</summary>
/// <param name="Card">Job card number.</param>
/// <param name="StartsAt">When its work is planned; who comes first gets first.</param>
/// <param name="NeededShort">Of what is used in any case, beyond what is reserved for it or on its bench.</param>
/// <param name="ReadyShort">The same of what only lies ready: named, but it holds nothing up.</param>
public sealed record PartWanted(int Card, Instant StartsAt, decimal NeededShort, decimal ReadyShort);

/// <summary>Comes in on a day.</summary>
public sealed record PartComing(LocalDate On, decimal Quantity);

/// <summary>What a visit has to wait for of one part.</summary>
/// <param name="NeededShort">Above 0 where the work waits for it.</param>
/// <param name="ReadyShort">Not there, but the work goes on without.</param>
/// <param name="ComesOn">The day on which enough is here for the work; absent where nobody knows, and where the work does not wait.</param>
public sealed record PartAwaited(int Card, decimal NeededShort, decimal ReadyShort, LocalDate? ComesOn);

/// <summary>Shares out what is free and what comes, first to who starts first, and says who waits for what and how long.</summary>
public static class Shortages
{
    /// <summary>
    /// Who lacks something of one part. What is free goes to the earliest visits, then each delivery; of one visit what it needs
    /// comes before what lies ready.
    /// </summary>
    /// <param name="wanted">One row a card.</param>
    /// <param name="free">On hand, not expired, reserved for nobody.</param>
    /// <param name="coming">Deliveries that are expected.</param>
    /// <param name="orderedToday">The day on which it comes if ordered today; absent where nobody knows how long it takes, or it is made no more.</param>
    public static IReadOnlyList<PartAwaited> Of(
        IReadOnlyList<PartWanted> wanted, decimal free, IReadOnlyList<PartComing> coming, LocalDate? orderedToday)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(coming);
        var supply = new Supply(free, [.. coming.OrderBy(c => c.On)]);
        var awaited = new List<PartAwaited>();
        foreach (var visit in wanted.OrderBy(w => w.StartsAt).ThenBy(w => w.Card))
        {
            var needed = visit.NeededShort - supply.TakeFree(visit.NeededShort);
            var ready = visit.ReadyShort - supply.TakeFree(visit.ReadyShort);
            if (needed <= 0 && ready <= 0)
            {
                continue;
            }

            var (last, open) = supply.TakeComing(needed);
            supply.TakeComing(ready);
            awaited.Add(new PartAwaited(visit.Card, needed, ready, needed <= 0 ? null : open > 0 ? orderedToday : last));
        }

        return awaited;
    }

    private sealed class Supply(decimal free, List<PartComing> coming)
    {
        private decimal free = free;

        public decimal TakeFree(decimal quantity)
        {
            var take = Math.Clamp(quantity, 0, free);
            free -= take;
            return take;
        }

        /// <summary>The day of the last delivery that it takes from, and what stays open after all of them.</summary>
        public (LocalDate? Last, decimal Open) TakeComing(decimal quantity)
        {
            LocalDate? last = null;
            for (var i = 0; i < coming.Count && quantity > 0; i++)
            {
                var take = Math.Min(quantity, coming[i].Quantity);
                if (take > 0)
                {
                    coming[i] = coming[i] with { Quantity = coming[i].Quantity - take };
                    (quantity, last) = (quantity - take, coming[i].On);
                }
            }

            return (last, quantity);
        }
    }
}
