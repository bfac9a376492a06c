using NodaTime;

namespace Workshop.Domain.Orders;

/// <summary>What a booked visit still wants of a part.</summary>
/// <param name="JobCardNumber">The visit.</param>
/// <param name="On">The day on which its work begins.</param>
/// <param name="Needed">Used in any case, in the part's unit; what was issued is no longer wanted.</param>
/// <param name="HaveReady">On the bench beside that, taken only when it turns out to be wanted.</param>
/// <param name="Reserved">Held for it in the stores.</param>
public sealed record BookedNeed(int JobCardNumber, LocalDate On, decimal Needed, decimal HaveReady, decimal Reserved);

/// <summary>What comes.</summary>
/// <param name="UsableFrom">The first day whose work can count on it.</param>
public sealed record Coming(LocalDate UsableFrom, decimal Quantity);

/// <summary>A day on which something comes or is wanted, and what is there after it.</summary>
/// <param name="Level">On hand and come, less what is needed until then; below zero where that is not enough.</param>
/// <param name="LevelIfAllUsed">The same, if all that lies ready were used as well.</param>
public sealed record ProjectedDay(
    LocalDate On, decimal Comes, decimal Needed, decimal HaveReady, decimal Level, decimal LevelIfAllUsed, IReadOnlyList<int> JobCardNumbers);

/// <summary>A visit that cannot have all it needs on its day.</summary>
/// <param name="ShortBy">Of what it needs.</param>
/// <param name="Until">The day from which it could have it; absent where nothing on order brings enough.</param>
public sealed record ShortVisit(int JobCardNumber, LocalDate On, decimal ShortBy, LocalDate? Until);

/// <summary>The stock of one part on the days to come: what is there, and comes, less the kits of the visits that are booked.</summary>
/// <param name="OnHand">Today, whoever has reserved it.</param>
/// <param name="Days">By day, from today on.</param>
/// <param name="FirstBelowZero">The first day on which not all that is needed can be there.</param>
/// <param name="FirstBelowZeroIfAllUsed">The same, if all that lies ready were used as well.</param>
/// <param name="ShortVisits">By day. Each visit has what is reserved for it; the rest goes by day, then by number.</param>
public sealed record ProjectedStock(
    decimal OnHand,
    IReadOnlyList<ProjectedDay> Days,
    LocalDate? FirstBelowZero,
    LocalDate? FirstBelowZeroIfAllUsed,
    IReadOnlyList<ShortVisit> ShortVisits)
{
    public decimal Lowest => Days.Count == 0 ? OnHand : Math.Min(OnHand, Days.Min(d => d.Level));

    /// <summary>Projects one part.</summary>
    /// <param name="onHand">0 or above, in the part's unit.</param>
    /// <param name="coming">Whatever has not come by the day it was expected on counts from the next on which it can.</param>
    /// <param name="needs">One a visit.</param>
    public static ProjectedStock Of(decimal onHand, IReadOnlyCollection<Coming> coming, IReadOnlyCollection<BookedNeed> needs)
    {
        ArgumentNullException.ThrowIfNull(coming);
        ArgumentNullException.ThrowIfNull(needs);
        ArgumentOutOfRangeException.ThrowIfNegative(onHand);
        var comes = coming.ToLookup(c => c.UsableFrom, c => c.Quantity);
        var wanted = needs.ToLookup(n => n.On);
        var (level, all) = (onHand, onHand);
        var days = new List<ProjectedDay>();
        foreach (var day in coming.Select(c => c.UsableFrom).Concat(needs.Select(n => n.On)).Distinct().Order())
        {
            var (arrives, needed, ready) = (comes[day].Sum(), wanted[day].Sum(n => n.Needed), wanted[day].Sum(n => n.HaveReady));
            level += arrives - needed;
            all += arrives - needed - ready;
            days.Add(new ProjectedDay(day, arrives, needed, ready, level, all, [.. wanted[day].Select(n => n.JobCardNumber).Order()]));
        }

        return new ProjectedStock(
            onHand, days, days.Find(d => d.Level < 0)?.On, days.Find(d => d.LevelIfAllUsed < 0)?.On, ShortOf(onHand, coming, needs));
    }

    private static List<ShortVisit> ShortOf(decimal onHand, IReadOnlyCollection<Coming> coming, IReadOnlyCollection<BookedNeed> needs)
    {
        var arrivals = coming.OrderBy(c => c.UsableFrom).ToList();

        // What visits hold is theirs, as far as it is there: where more is held than that, the earlier have it. What they hold beyond
        // what they need comes back, so that it is nobody's.
        var left = onHand;
        var lacking = new List<(BookedNeed Need, decimal Open)>();
        foreach (var need in needs.OrderBy(n => n.On).ThenBy(n => n.JobCardNumber))
        {
            var held = Math.Min(Math.Min(need.Reserved, need.Needed), left);
            left -= held;
            lacking.Add((need, need.Needed - held));
        }

        // Summed up, since the visits before it have taken theirs of what is free and comes.
        var wanted = 0m;
        var found = new List<ShortVisit>();
        foreach (var (need, open) in lacking.Where(l => l.Open > 0))
        {
            wanted += open;
            var there = left + arrivals.TakeWhile(a => a.UsableFrom <= need.On).Sum(a => a.Quantity);
            if (wanted > there)
            {
                found.Add(new ShortVisit(need.JobCardNumber, need.On, Math.Min(open, wanted - there), Enough(arrivals, wanted - left)));
            }
        }

        return found;
    }

    private static LocalDate? Enough(List<Coming> arrivals, decimal wanted)
    {
        var sum = 0m;
        foreach (var arrival in arrivals)
        {
            sum += arrival.Quantity;
            if (sum >= wanted)
            {
                return arrival.UsableFrom;
            }
        }

        return null;
    }
}
