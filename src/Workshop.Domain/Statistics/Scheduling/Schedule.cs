namespace Workshop.Domain.Statistics.Scheduling;

/// <summary>When the tasks of a job take place, and who serves.</summary>
/// <param name="Tasks">From first to last unit of each task.</param>
/// <param name="Chosen">The resource of each of the job's choices.</param>
public sealed record PlacedJob(IReadOnlyList<TimeStretch> Tasks, IReadOnlyList<int> Chosen)
{
    /// <summary>Whether the other has the same times and resources.</summary>
    public bool IsAs(PlacedJob other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Tasks.SequenceEqual(other.Tasks) && Chosen.SequenceEqual(other.Chosen);
    }

    /// <summary>What it takes of which resource: the stretches of its workers, and its holds.</summary>
    /// <exception cref="ArgumentException">A task lies where its worker does not work; <see cref="ScheduleCheck"/> says which.</exception>
    public IReadOnlyList<(int Resource, TimeStretch Stretch)> Takes(ScheduleProblem problem, ScheduleJob job)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(job);
        var takes = job.Holds
            .Select(h => (Chosen[h.Choice], new TimeStretch(Tasks[h.First].From, Tasks[h.Last].Until)))
            .ToList();
        for (var index = 0; index < job.Tasks.Count; index++)
        {
            if (job.Tasks[index].Worker is { } worker && job.Tasks[index].Duration > 0)
            {
                takes.AddRange(Worked(problem, Chosen[worker], Tasks[index], job.Tasks[index].Duration)
                    .Select(s => (Chosen[worker], s)));
            }
        }

        return takes;
    }

    private static IReadOnlyList<TimeStretch> Worked(ScheduleProblem problem, int resource, TimeStretch task, int units) =>
        problem.AxisOf(resource) is not { } axis
            ? [task]
            : axis.Worked(task.From, units)
                ?? throw new ArgumentException($"Resource {resource} does not work {units} units from {task.From} on.", nameof(problem));
}

/// <summary>All jobs in their places, in the order of the problem's jobs.</summary>
public sealed record Schedule(IReadOnlyList<PlacedJob> Jobs);

/// <summary>
/// What a schedule costs: first when its last job ends, then how uneven the load is, then how many jobs differ from the
/// schedule that stood before. Smaller is better, the first difference decides.
/// </summary>
/// <param name="Ends">End of the last task of all jobs.</param>
/// <param name="Unevenness">Largest less smallest weighted load.</param>
/// <param name="Moved">Jobs that are not where they were; 0 where nothing stood before.</param>
public sealed record ScheduleCost(int Ends, long Unevenness, int Moved) : IComparable<ScheduleCost>
{
    /// <summary>The cost by plain counting, whoever made the schedule.</summary>
    public static ScheduleCost Of(ScheduleProblem problem, Schedule schedule, Schedule? before)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(schedule);
        var loads = Loads(problem, schedule);
        return new ScheduleCost(
            schedule.Jobs.Select(j => j.Tasks[^1].Until).DefaultIfEmpty(0).Max(),
            loads.Count == 0 ? 0 : loads.Max() - loads.Min(),
            before is null ? 0 : schedule.Jobs.Zip(before.Jobs).Count(pair => !pair.First.IsAs(pair.Second)));
    }

    /// <summary>Weighted load of each of the problem's workers.</summary>
    public static IReadOnlyList<long> Loads(ScheduleProblem problem, Schedule schedule)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(schedule);
        return problem.Loads.Select(load => load.Weight * (long)(load.Already + problem.Jobs.Zip(schedule.Jobs).Sum(pair =>
            pair.First.Tasks.Where(t => t.Worker is { } w && pair.Second.Chosen[w] == load.Resource).Sum(t => t.Duration)))).ToArray();
    }

    public int CompareTo(ScheduleCost? other) => other is null
        ? 1
        : (Ends, Unevenness, Moved).CompareTo((other.Ends, other.Unevenness, other.Moved));

    public static bool operator <(ScheduleCost left, ScheduleCost right) => Comparer<ScheduleCost>.Default.Compare(left, right) < 0;

    public static bool operator >(ScheduleCost left, ScheduleCost right) => Comparer<ScheduleCost>.Default.Compare(left, right) > 0;

    public static bool operator <=(ScheduleCost left, ScheduleCost right) => Comparer<ScheduleCost>.Default.Compare(left, right) <= 0;

    public static bool operator >=(ScheduleCost left, ScheduleCost right) => Comparer<ScheduleCost>.Default.Compare(left, right) >= 0;
}
