using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>
/// Half-open spans of time in order, none touching another, in ticks of 100 ns since 1970: what a search asks millions of
/// times. Touching is not overlapping.
/// </summary>
public sealed class Spans
{
    /// <summary>Later than anything that is planned.</summary>
    public const long Never = long.MaxValue;

    /// <summary>No span at all.</summary>
    public static readonly Spans None = new([], []);

    private readonly long[] starts;
    private readonly long[] ends;

    private Spans(long[] starts, long[] ends) => (this.starts, this.ends) = (starts, ends);

    public int Count => starts.Length;

    public static long Ticks(Instant instant) => instant.ToUnixTimeTicks();

    public static Interval Interval(long from, long until) =>
        new(Instant.FromUnixTimeTicks(from), Instant.FromUnixTimeTicks(until));

    /// <summary>The union of the spans; empty ones are left out.</summary>
    public static Spans Of(IEnumerable<Interval> intervals) =>
        Union(intervals.Select(i => (Ticks(i.Start), Ticks(i.End))));

    public static Spans Union(IEnumerable<(long From, long Until)> spans)
    {
        var (starts, ends) = (new List<long>(), new List<long>());
        foreach (var (from, until) in spans.Where(s => s.Until > s.From).OrderBy(s => s.From))
        {
            if (ends.Count > 0 && from <= ends[^1])
            {
                ends[^1] = Math.Max(ends[^1], until);
            }
            else
            {
                starts.Add(from);
                ends.Add(until);
            }
        }

        return new Spans(starts.ToArray(), ends.ToArray());
    }

    public long Start(int index) => starts[index];

    public long End(int index) => ends[index];

    public IEnumerable<(long From, long Until)> Each() => starts.Zip(ends);

    /// <summary>The first span that ends after <paramref name="at"/>; <see cref="Count"/> when there is none.</summary>
    public int EndingAfter(long at)
    {
        var found = Array.BinarySearch(ends, at);
        return found < 0 ? ~found : found + 1;
    }

    /// <summary>The last span that starts before <paramref name="at"/>; -1 when there is none.</summary>
    public int StartingBefore(long at)
    {
        var found = Array.BinarySearch(starts, at);
        return (found < 0 ? ~found : found) - 1;
    }

    /// <summary>The span that holds the moment; -1 when none does.</summary>
    public int Holding(long at)
    {
        var index = EndingAfter(at);
        return index < Count && starts[index] <= at ? index : -1;
    }

    /// <summary>The first span that has time in common with [from, until); -1 when none has.</summary>
    public int Overlapping(long from, long until)
    {
        var index = EndingAfter(from);
        return index < Count && starts[index] < until ? index : -1;
    }

    /// <summary>The last span that has time in common with [from, until); -1 when none has.</summary>
    public int LastOverlapping(long from, long until)
    {
        var index = StartingBefore(until);
        return index >= 0 && ends[index] > from ? index : -1;
    }

    /// <summary>These spans without what <paramref name="other"/> covers.</summary>
    public Spans Without(Spans other)
    {
        if (other.Count == 0)
        {
            return this;
        }

        var left = new List<(long, long)>(Count);
        for (var i = 0; i < Count; i++)
        {
            var from = starts[i];
            for (var j = other.EndingAfter(from); j < other.Count && other.starts[j] < ends[i]; j++)
            {
                if (other.starts[j] > from)
                {
                    left.Add((from, other.starts[j]));
                }

                from = other.ends[j];
            }

            if (from < ends[i])
            {
                left.Add((from, ends[i]));
            }
        }

        return new Spans(left.Select(s => s.Item1).ToArray(), left.Select(s => s.Item2).ToArray());
    }
}
