namespace Workshop.Domain.Statistics.Scheduling;

/// <summary>A stretch of time in whole units, half open: what ends at 5 and what starts at 5 do not overlap.</summary>
/// <param name="From">First unit that belongs to it.</param>
/// <param name="Until">First unit that no longer does; not before <paramref name="From"/>.</param>
public readonly record struct TimeStretch(int From, int Until)
{
    /// <summary>In units.</summary>
    public int Length => Until - From;

    /// <summary>Two stretches overlap where each starts before the other ends.</summary>
    public bool Overlaps(TimeStretch other) => From < other.Until && other.From < Until;

    /// <summary>Whether the other lies in this one whole.</summary>
    public bool Holds(TimeStretch other) => From <= other.From && other.Until <= Until;

    /// <summary>In order, cut to a range, those that touch or overlap joined, empty ones left out.</summary>
    public static IReadOnlyList<TimeStretch> Joined(IEnumerable<TimeStretch> stretches, TimeStretch range)
    {
        ArgumentNullException.ThrowIfNull(stretches);
        var joined = new List<TimeStretch>();
        var cut = stretches.Select(s => new TimeStretch(Math.Max(s.From, range.From), Math.Min(s.Until, range.Until)));
        foreach (var stretch in cut.Where(s => s.Length > 0).OrderBy(s => s.From))
        {
            if (joined.Count > 0 && stretch.From <= joined[^1].Until)
            {
                joined[^1] = joined[^1] with { Until = Math.Max(joined[^1].Until, stretch.Until) };
            }
            else
            {
                joined.Add(stretch);
            }
        }

        return joined;
    }
}
