using NodaTime;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Bookings;

/// <summary>With so many bays.</summary>
/// <param name="Share">Of the opening hours in which exactly so many were taken.</param>
/// <param name="Waits">Erlang's C: the probability that a visit would find all of them taken.</param>
/// <param name="MeanWaitHours">Opening hours that a visit would wait on average; absent where the line would grow without end.</param>
public sealed record BayCount(int Bays, double Share, double Waits, double? MeanWaitHours);

/// <summary>How many bays a workshop would need: what it took, and what Erlang's line says of the same load.</summary>
/// <param name="OpenHours">That were looked at.</param>
/// <param name="Holdings">How often a visit took a bay.</param>
/// <param name="MeanHours">Opening hours that one keeps it on average.</param>
/// <param name="Load">Bays taken at the same time on average: what Erlang calls the offered load.</param>
/// <param name="MostAtOnce">Taken at the same time at the most.</param>
/// <param name="Counts">From no bay to some more than are needed.</param>
/// <param name="EnoughBays">The fewest with which at most one visit in ten would wait, by Erlang; absent where nothing was taken.</param>
public sealed record BaysNeeded(
    double OpenHours, int Holdings, double MeanHours, double Load, int MostAtOnce, IReadOnlyList<BayCount> Counts, int? EnoughBays)
{
    /// <summary>At most one visit in ten waits.</summary>
    public const double MostThatWait = 0.1;

    private const int Beyond = 2;

    /// <summary>
    /// From what bays held over opening hours. Erlang's C takes visits to come at random and to be served in turn; booked visits come
    /// more evenly, so it says more waiting than there would be, and visits that were turned away are not in it.
    /// </summary>
    /// <param name="held">Of bays only; spans of one visit in one bay that touch are one holding.</param>
    /// <param name="open">Opening hours that do not overlap.</param>
    /// <param name="bays">How many there are.</param>
    public static BaysNeeded Of(IReadOnlyCollection<HeldBy> held, IReadOnlyCollection<Interval> open, int bays)
    {
        ArgumentNullException.ThrowIfNull(held);
        ArgumentNullException.ThrowIfNull(open);
        var hours = TakenAtOnce.Total(open).TotalHours;
        var atOnce = TakenAtOnce.Of(held.Select(h => h.Span).ToArray(), open);
        var load = hours > 0 ? atOnce.Sum(a => a.Count * a.Time.TotalHours) / hours : 0;
        var holdings = held.Where(h => open.Any(o => o.Start < h.Span.End && h.Span.Start < o.End))
            .DistinctBy(h => (h.JobCardNumber, h.ResourceId)).Count();
        var enough = load > 0 ? ErlangQueue.ServersFor(load, MostThatWait) : (int?)null;
        var arrivals = hours > 0 ? holdings / hours : 0;
        var last = new[] { bays, enough ?? 0, atOnce[^1].Count }.Max() + Beyond;
        return new BaysNeeded(
            hours, holdings, holdings > 0 ? load * hours / holdings : 0, load, atOnce[^1].Count,
            Enumerable.Range(0, last + 1).Select(n => new BayCount(
                n,
                hours > 0 && n < atOnce.Count ? atOnce[n].Time.TotalHours / hours : 0,
                load > 0 ? ErlangQueue.Waits(n, load) : 0,
                n > load && arrivals > 0 ? ErlangQueue.MeanQueue(n, load) / arrivals : null)).ToArray(),
            enough);
    }
}
