using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>For how long so many were taken at the same time.</summary>
/// <param name="Count">How many.</param>
/// <param name="Time">Within the time looked at.</param>
public sealed record AtOnce(int Count, Duration Time);

/// <summary>How many of a kind of resource are taken at the same time, weighed by time.</summary>
public static class TakenAtOnce
{
    /// <summary>From none to the most that were taken at once; the times add up to the time looked at.</summary>
    /// <param name="taken">Spans of all of them together; half open, so that touching is not at the same time.</param>
    /// <param name="within">When to look: spans that do not overlap.</param>
    public static IReadOnlyList<AtOnce> Of(IReadOnlyCollection<Interval> taken, IReadOnlyCollection<Interval> within)
    {
        ArgumentNullException.ThrowIfNull(taken);
        ArgumentNullException.ThrowIfNull(within);
        var changes = taken.SelectMany(t => new[] { (At: t.Start, By: 1), (At: t.End, By: -1) })
            .GroupBy(c => c.At, c => c.By)
            .Select(c => (At: c.Key, By: c.Sum()))
            .OrderBy(c => c.At)
            .ToArray();
        var times = new Dictionary<int, Duration>();
        foreach (var look in within.Where(w => w.Duration > Duration.Zero))
        {
            var (count, from) = (changes.TakeWhile(c => c.At <= look.Start).Sum(c => c.By), look.Start);
            foreach (var change in changes.Where(c => c.At > look.Start && c.At < look.End))
            {
                times[count] = times.GetValueOrDefault(count) + (change.At - from);
                (count, from) = (count + change.By, change.At);
            }

            times[count] = times.GetValueOrDefault(count) + (look.End - from);
        }

        return [.. Enumerable.Range(0, 1 + times.Keys.DefaultIfEmpty(0).Max()).Select(n => new AtOnce(n, times.GetValueOrDefault(n)))];
    }

    /// <summary>The part of some spans that lies in others.</summary>
    /// <param name="spans">Those that are cut.</param>
    /// <param name="within">Spans that do not overlap.</param>
    public static IReadOnlyList<Interval> Cut(IEnumerable<Interval> spans, IReadOnlyCollection<Interval> within)
    {
        ArgumentNullException.ThrowIfNull(spans);
        ArgumentNullException.ThrowIfNull(within);
        return [.. spans.SelectMany(s => within
            .Where(w => w.Start < s.End && s.Start < w.End)
            .Select(w => new Interval(Instant.Max(s.Start, w.Start), Instant.Min(s.End, w.End))))];
    }

    /// <summary>Their lengths together.</summary>
    public static Duration Total(IEnumerable<Interval> spans)
    {
        ArgumentNullException.ThrowIfNull(spans);
        return spans.Aggregate(Duration.Zero, (sum, span) => sum + span.Duration);
    }
}
