using NodaTime;
using Workshop.Domain.Kits;

namespace Workshop.Domain.Orders;

/// <summary>A day on which something comes, is wanted or has expired, and what is there after it.</summary>
/// <param name="Expires">Was to be used by the day before, and no visit until then needed it: it is not there any more.</param>
/// <param name="Level">On hand and come, less what is needed and what expires until then; below zero where that is not enough.</param>
/// <param name="LevelIfAllUsed">The same, if all that lies ready were used as well.</param>
public sealed record ProjectedDay(
    LocalDate On, decimal Comes, decimal Needed, decimal HaveReady, decimal Expires, decimal Level, decimal LevelIfAllUsed, IReadOnlyList<int> JobCardNumbers);

/// <summary>A visit that cannot have all it needs on its day.</summary>
/// <param name="ShortBy">Of what it needs.</param>
/// <param name="Until">The day from which it could have it; absent where nothing on order brings enough.</param>
public sealed record ShortVisit(int JobCardNumber, LocalDate On, decimal ShortBy, LocalDate? Until);

/// <summary>The stock of one part on the days to come: what is there, and comes, less the kits of the visits that are booked.</summary>
/// <param name="OnHand">Today, not past its last day, whoever has reserved it.</param>
/// <param name="Days">By day, from today on.</param>
/// <param name="FirstBelowZero">The first day on which not all that is needed can be there.</param>
/// <param name="FirstBelowZeroIfAllUsed">The same, if all that lies ready were used as well.</param>
/// <param name="ShortVisits">By day, as <see cref="StockShares"/> shares out.</param>
public sealed record ProjectedStock(
    decimal OnHand,
    IReadOnlyList<ProjectedDay> Days,
    LocalDate? FirstBelowZero,
    LocalDate? FirstBelowZeroIfAllUsed,
    IReadOnlyList<ShortVisit> ShortVisits)
{
    public decimal Lowest => Days.Count == 0 ? OnHand : Math.Min(OnHand, Days.Min(d => d.Level));

    /// <summary>Projects one part.</summary>
    /// <param name="days">From today to the last day that is shown; visits beyond it have their share all the same.</param>
    /// <param name="lots">One row for each last day; what is past its day is not counted.</param>
    /// <param name="coming">Whatever has not come by the day it was expected on counts from the next on which it can.</param>
    /// <param name="needs">One a visit, all of them.</param>
    public static ProjectedStock Of(
        DateInterval days, IReadOnlyCollection<LotThere> lots, IReadOnlyCollection<Coming> coming, IReadOnlyCollection<BookedNeed> needs)
    {
        ArgumentNullException.ThrowIfNull(days);
        ArgumentNullException.ThrowIfNull(coming);
        ArgumentNullException.ThrowIfNull(needs);
        var there = lots.Where(l => l.LastsUntil(days.Start)).ToList();
        var comes = coming.ToLookup(c => c.UsableFrom, c => c.Quantity);
        var wanted = needs.ToLookup(n => n.On);
        var (level, all) = (new Shelf(there), new Shelf(there));
        var found = new List<ProjectedDay>();
        foreach (var day in coming.Select(c => c.UsableFrom).Concat(needs.Select(n => n.On))
            .Concat(there.Select(l => l.ExpiresOn).OfType<LocalDate>().Select(last => last.PlusDays(1))).Where(days.Contains).Distinct().Order())
        {
            var (arrives, needed, ready) = (comes[day].Sum(), wanted[day].Sum(n => n.Needed), wanted[day].Sum(n => n.HaveReady));
            var expires = level.Pass(day, arrives, needed);
            all.Pass(day, arrives, needed + ready);
            if (arrives > 0 || wanted[day].Any() || expires > 0)
            {
                found.Add(new ProjectedDay(day, arrives, needed, ready, expires, level.Level, all.Level, [.. wanted[day].Select(n => n.JobCardNumber).Order()]));
            }
        }

        return new ProjectedStock(
            there.Sum(l => l.OnHand), found, found.Find(d => d.Level < 0)?.On, found.Find(d => d.LevelIfAllUsed < 0)?.On,
            [
                .. StockShares.Of(lots, coming, needs).Where(s => s.ShortOnDay > 0 && days.Contains(s.Need.On))
                    .Select(s => new ShortVisit(s.Need.JobCardNumber, s.Need.On, s.ShortOnDay, s.EnoughFrom)),
            ]);
    }

    /// <summary>What lies there day after day, whoever has reserved it: what expires first is used first, what keeps makes up for what was missing.</summary>
    private sealed class Shelf(List<LotThere> lots)
    {
        private readonly List<LotQuantity> expiring =
            [.. lots.Where(l => l.ExpiresOn is not null).OrderBy(l => l.ExpiresOn).Select(l => new LotQuantity(l.ExpiresOn, l.OnHand))];

        // Below zero where something was needed and not there: deliveries make up for it first.
        private decimal keeping = lots.Where(l => l.ExpiresOn is null).Sum(l => l.OnHand);

        public decimal Level => keeping + expiring.Sum(l => l.Quantity);

        /// <summary>What expired before the day unused.</summary>
        public decimal Pass(LocalDate day, decimal arrives, decimal used)
        {
            var expired = expiring.Where(l => !l.LastsUntil(day)).Sum(l => l.Quantity);
            expiring.RemoveAll(l => !l.LastsUntil(day));
            for (var i = 0; i < expiring.Count && used > 0; i++)
            {
                var take = Math.Min(used, expiring[i].Quantity);
                expiring[i] = expiring[i] with { Quantity = expiring[i].Quantity - take };
                used -= take;
            }

            keeping += arrives - used;
            return expired;
        }
    }
}
