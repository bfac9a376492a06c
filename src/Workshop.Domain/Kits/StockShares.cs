using NodaTime;

namespace Workshop.Domain.Kits;

/// <summary>What lies of one part with one last day, over all places. Used parts and shims are no matter of kits.</summary>
/// <param name="ExpiresOn">The last day on which it may be used; absent where it keeps.</param>
/// <param name="OnHand">Whoever has reserved it; 0 or above, in the part's unit.</param>
/// <param name="Free">Of that, reserved for nobody, place by place.</param>
/// <param name="Gone">Reserved, but not there any more: others took it without asking.</param>
public sealed record LotThere(LocalDate? ExpiresOn, decimal OnHand, decimal Free, decimal Gone)
{
    /// <inheritdoc cref="LotQuantity.LastsUntil"/>
    public bool LastsUntil(LocalDate day) => new LotQuantity(ExpiresOn, OnHand).LastsUntil(day);
}

/// <summary>So much of what has this last day.</summary>
/// <param name="ExpiresOn">Absent where it keeps.</param>
public sealed record LotQuantity(LocalDate? ExpiresOn, decimal Quantity)
{
    /// <summary>May still be used on that day.</summary>
    public bool LastsUntil(LocalDate day) => ExpiresOn is not { } last || last >= day;
}

/// <summary>What a visit that is booked, or here, still wants of a part.</summary>
/// <param name="JobCardNumber">The visit.</param>
/// <param name="Begins">When its work is planned; who begins first gets first.</param>
/// <param name="On">The day on which its work begins, never before today: what expires before it is not there for it.</param>
/// <param name="Needed">Used in any case, in the part's unit; what was issued is no longer wanted.</param>
/// <param name="HaveReady">On the bench beside that, taken only when it turns out to be wanted.</param>
/// <param name="Held">Reserved for it in the stores, lasting or not.</param>
public sealed record BookedNeed(int JobCardNumber, Instant Begins, LocalDate On, decimal Needed, decimal HaveReady, IReadOnlyList<LotQuantity> Held)
{
    /// <summary>Held for it, of what lasts until its day.</summary>
    public decimal Reserved => Held.Where(h => h.LastsUntil(On)).Sum(h => h.Quantity);
}

/// <summary>What comes.</summary>
/// <param name="UsableFrom">The first day whose work can count on it.</param>
/// <param name="ExpectedOn">The day of the delivery.</param>
public sealed record Coming(LocalDate UsableFrom, decimal Quantity, LocalDate ExpectedOn);

/// <summary>What one visit gets of a part, once everything is shared out.</summary>
/// <param name="FromStores">What lies there now and is its own, by last day; none of it expires before its day.</param>
/// <param name="NotHere">Of what it needs, not there now.</param>
/// <param name="ReadyNotHere">The same of what only lies ready: named, but it holds nothing up.</param>
/// <param name="ShortOnDay">Of what it needs, not there on its day either, whatever is on order.</param>
/// <param name="NotOnOrder">Of what it needs, neither there nor on order.</param>
/// <param name="Last">The last delivery that it waits for; absent where it waits for none.</param>
public sealed record VisitShare(
    BookedNeed Need, IReadOnlyList<LotQuantity> FromStores, decimal NotHere, decimal ReadyNotHere, decimal ShortOnDay, decimal NotOnOrder, Coming? Last)
{
    /// <summary>The day from which it can have all that it needs; absent where nothing is missing, or nothing on order brings enough.</summary>
    public LocalDate? EnoughFrom => NotOnOrder > 0 ? null : Last?.UsableFrom;
}

/// <summary>
/// The one rule of who gets what of a part. What is reserved for a visit is its own, needed or ready, as far as it is there and lasts until
/// its day; where others took some of it, the visits that begin last do without. What is free goes to needs, who begins first is first, by
/// what expires first of what lasts until the day; then come the deliveries, in their order. What only lies ready gets what is left, so
/// that it delays nobody.
/// </summary>
public static class StockShares
{
    /// <summary>Shares out one part.</summary>
    /// <param name="lots">One row for each last day.</param>
    /// <param name="needs">One a visit, all that are booked or here: to leave one out gives its share away.</param>
    /// <returns>One a visit, in the order in which they get.</returns>
    public static IReadOnlyList<VisitShare> Of(
        IReadOnlyCollection<LotThere> lots, IReadOnlyCollection<Coming> coming, IReadOnlyCollection<BookedNeed> needs)
    {
        ArgumentNullException.ThrowIfNull(lots);
        ArgumentNullException.ThrowIfNull(coming);
        ArgumentNullException.ThrowIfNull(needs);
        var pool = new Pool(lots, coming);
        var visits = needs.OrderBy(n => n.Begins).ThenBy(n => n.JobCardNumber).Select(n => new Visit(n)).ToList();
        foreach (var visit in Enumerable.Reverse(visits))
        {
            visit.Hold(pool);
        }

        foreach (var visit in visits)
        {
            visit.TakeHeld();
            visit.Needed -= pool.TakeFree(visit.Needed, visit);
            visit.WaitFor(pool);
        }

        foreach (var visit in visits)
        {
            visit.Ready -= pool.TakeFree(visit.Ready, visit);
        }

        return visits.ConvertAll(v => v.Share);
    }

    private sealed class Visit(BookedNeed need)
    {
        private readonly List<LotQuantity> taken = [];
        private List<LotQuantity> held = [];
        private decimal late;
        private decimal open;
        private Coming? last;

        public BookedNeed Need => need;

        public decimal Needed { get; set; } = need.Needed;

        public decimal Ready { get; set; } = need.HaveReady;

        public VisitShare Share => new(
            need, [.. taken.GroupBy(t => t.ExpiresOn).Select(g => new LotQuantity(g.Key, g.Sum(t => t.Quantity)))], Needed, Ready, late + open, open, last);

        /// <summary>What it holds that is there; asked from the last visit on, since those lose first.</summary>
        public void Hold(Pool pool) => held =
        [
            .. need.Held.Where(h => h.Quantity > 0).Select(h => h with { Quantity = h.Quantity - pool.Lose(h) })
                .Where(h => h.Quantity > 0 && h.LastsUntil(need.On)).OrderBy(h => h.ExpiresOn ?? LocalDate.MaxIsoValue),
        ];

        public void TakeHeld()
        {
            foreach (var lot in held)
            {
                var needed = Math.Min(Needed, lot.Quantity);
                var ready = Math.Min(Ready, lot.Quantity - needed);
                (Needed, Ready) = (Needed - needed, Ready - ready);
                Take(lot.ExpiresOn, needed + ready);
            }
        }

        public void Take(LocalDate? expiresOn, decimal quantity)
        {
            if (quantity > 0)
            {
                taken.Add(new LotQuantity(expiresOn, quantity));
            }
        }

        public void WaitFor(Pool pool)
        {
            open = Needed;
            foreach (var (delivery, quantity) in pool.TakeComing(Needed))
            {
                open -= quantity;
                late += delivery.UsableFrom > need.On ? quantity : 0;
                last = delivery;
            }
        }
    }

    private sealed class Pool(IReadOnlyCollection<LotThere> lots, IReadOnlyCollection<Coming> coming)
    {
        private readonly List<LotThere> lots = [.. lots.OrderBy(l => l.ExpiresOn ?? LocalDate.MaxIsoValue)];
        private readonly List<Coming> coming = [.. coming.OrderBy(c => c.UsableFrom).ThenBy(c => c.ExpectedOn)];

        /// <summary>How much of what is held is not there any more.</summary>
        public decimal Lose(LotQuantity held)
        {
            var at = lots.FindIndex(l => l.ExpiresOn == held.ExpiresOn);
            if (at < 0)
            {
                return held.Quantity;
            }

            var lost = Math.Min(lots[at].Gone, held.Quantity);
            lots[at] = lots[at] with { Gone = lots[at].Gone - lost };
            return lost;
        }

        public decimal TakeFree(decimal quantity, Visit visit)
        {
            var open = quantity;
            for (var i = 0; i < lots.Count && open > 0; i++)
            {
                var take = lots[i].LastsUntil(visit.Need.On) ? Math.Min(open, lots[i].Free) : 0;
                lots[i] = lots[i] with { Free = lots[i].Free - take };
                visit.Take(lots[i].ExpiresOn, take);
                open -= take;
            }

            return quantity - open;
        }

        public List<(Coming Delivery, decimal Quantity)> TakeComing(decimal quantity)
        {
            var taken = new List<(Coming, decimal)>();
            for (var i = 0; i < coming.Count && quantity > 0; i++)
            {
                var (delivery, take) = (coming[i], Math.Min(quantity, coming[i].Quantity));
                if (take > 0)
                {
                    coming[i] = delivery with { Quantity = delivery.Quantity - take };
                    quantity -= take;
                    taken.Add((delivery, take));
                }
            }

            return taken;
        }
    }
}
