using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>What is left of a day for one resource.</summary>
public static class FreeSpans
{
    /// <summary>The parts of <paramref name="open"/> that no span of <paramref name="taken"/> covers, in order of time.</summary>
    public static IReadOnlyList<Interval> Of(Interval open, IEnumerable<Interval> taken)
    {
        var free = new List<Interval>();
        var from = open.Start;
        foreach (var span in taken.OrderBy(s => s.Start))
        {
            if (span.Start > from)
            {
                free.Add(new Interval(from, Instant.Min(span.Start, open.End)));
            }

            from = Instant.Max(from, span.End);
            if (from >= open.End)
            {
                return free;
            }
        }

        free.Add(new Interval(from, open.End));
        return free;
    }
}
