namespace Workshop.Domain.Statistics.Scheduling;

/// <summary>
/// The time in which a worker works, laid end to end. On this axis a task that goes on after a break or a night is one
/// unbroken stretch, so that "nobody works at two things at once" is a matter of stretches that do not overlap.
/// </summary>
public sealed class WorkingAxis
{
    private readonly int[] before;

    /// <summary>The axis of one worker.</summary>
    /// <param name="working">When the worker works, in real time; in any order.</param>
    /// <param name="horizon">Nothing counts from here on, nor before 0.</param>
    public WorkingAxis(IEnumerable<TimeStretch> working, int horizon)
    {
        Parts = TimeStretch.Joined(working, new TimeStretch(0, horizon));
        before = new int[Parts.Count];
        for (var part = 0; part < Parts.Count; part++)
        {
            before[part] = Length;
            Length += Parts[part].Length;
        }
    }

    /// <summary>The stretches of real time, in order, apart from each other.</summary>
    public IReadOnlyList<TimeStretch> Parts { get; }

    /// <summary>Units of work in all.</summary>
    public int Length { get; }

    /// <summary>Units of work before a part begins.</summary>
    public int Before(int part) => before[part];

    /// <summary>Units of work before a moment of real time.</summary>
    public int WorkedBefore(int moment)
    {
        var worked = 0;
        foreach (var part in Parts.TakeWhile(p => p.From < moment))
        {
            worked += Math.Min(part.Until, moment) - part.From;
        }

        return worked;
    }

    /// <summary>
    /// The real time in which <paramref name="units"/> of work are done that begin at <paramref name="start"/>; one stretch for
    /// each part of the axis. Nothing where the worker does not work at the start, or has not so many units left.
    /// </summary>
    public IReadOnlyList<TimeStretch>? Worked(int start, int units)
    {
        if (!Parts.Any(p => p.From <= start && start < p.Until))
        {
            return null;
        }

        var (stretches, left) = (new List<TimeStretch>(), units);
        foreach (var part in Parts.Where(p => p.Until > start))
        {
            if (left == 0)
            {
                break;
            }

            var from = Math.Max(part.From, start);
            var stretch = new TimeStretch(from, Math.Min(part.Until, from + left));
            stretches.Add(stretch);
            left -= stretch.Length;
        }

        return left == 0 ? stretches : null;
    }
}
