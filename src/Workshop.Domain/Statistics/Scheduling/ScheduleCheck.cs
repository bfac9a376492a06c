namespace Workshop.Domain.Statistics.Scheduling;

/// <summary>Whether a schedule keeps to its problem, by plain counting and without a solver.</summary>
public static class ScheduleCheck
{
    /// <summary>What is wrong with it, in words; none when it is feasible.</summary>
    public static IReadOnlyList<string> Faults(ScheduleProblem problem, Schedule schedule)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(schedule);
        if (schedule.Jobs.Count != problem.Jobs.Count)
        {
            return [$"{schedule.Jobs.Count} jobs are placed, {problem.Jobs.Count} are asked for"];
        }

        var faults = problem.Jobs.SelectMany((job, index) => OfJob(problem, job, schedule.Jobs[index], $"job {index}")).ToArray();
        return faults.Length > 0 ? faults : Overlaps(problem, schedule);
    }

    private static IEnumerable<string> OfJob(ScheduleProblem problem, ScheduleJob job, PlacedJob placed, string name)
    {
        if (placed.Tasks.Count != job.Tasks.Count || placed.Chosen.Count != job.Choices.Count)
        {
            return [$"{name} has other tasks or choices than are asked for"];
        }

        var choices = job.Choices
            .Select((choice, index) => (choice, index, Chosen: placed.Chosen[index]))
            .Where(c => !c.choice.Contains(c.Chosen))
            .Select(c => $"{name} has resource {c.Chosen}, which is none of choice {c.index}");
        var tasks = job.Tasks.SelectMany((task, index) => OfTask(
                problem, task, placed, placed.Tasks[index], index == 0 ? null : placed.Tasks[index - 1].Until)
            .Select(fault => $"{name}, task {index}: {fault}"));
        var tied = job.Tied
            .Where(t => job.Choices[t.To].Contains(placed.Chosen[t.Choice]) && placed.Chosen[t.To] != placed.Chosen[t.Choice])
            .Select(t => $"{name} has resource {placed.Chosen[t.Choice]} in choice {t.Choice}, and another in choice {t.To}");
        return choices.Concat(tied).Concat(tasks);
    }

    private static IEnumerable<string> OfTask(
        ScheduleProblem problem, ScheduleTask task, PlacedJob placed, TimeStretch at, int? before)
    {
        var gap = before is { } end ? at.From - end : task.MinGap;
        (bool Broken, string Sentence)[] rules =
        [
            (at.From < Math.Max(0, task.NotBefore) || at.Until > Math.Min(problem.Horizon, task.EndsBy ?? problem.Horizon),
                $"{at} is outside the time that is allowed"),
            (gap < task.MinGap || (before is not null && gap > (task.MaxGap ?? problem.Horizon)), $"it starts {gap} after the task before"),
            (task.Within is { } within && !within.Any(w => w.Holds(at)), $"{at} lies in none of the stretches that are allowed"),
            (task.Starts is { } starts && !starts.Contains(at.From), $"it starts at {at.From}, which is no allowed start"),
            (!Lasts(problem, task, placed, at), $"{at} is not the time that {task.Duration} units take"),
        ];
        return rules.Where(r => r.Broken).Select(r => r.Sentence);
    }

    private static bool Lasts(ScheduleProblem problem, ScheduleTask task, PlacedJob placed, TimeStretch at) =>
        task.Worker is not { } worker || task.Duration == 0
            ? at.Length >= task.Duration && at.Length <= (task.Longest ?? task.Duration)
            : problem.AxisOf(placed.Chosen[worker]) is not { } axis
                ? at.Length == task.Duration
                : axis.Worked(at.From, task.Duration) is { } worked && worked[^1].Until == at.Until
                    && (!task.Unbroken || at.Length == task.Duration);

    private static string[] Overlaps(ScheduleProblem problem, Schedule schedule)
    {
        var taken = problem.Resources
            .SelectMany((resource, index) => TimeStretch.Joined(resource.Taken, new TimeStretch(0, problem.Horizon))
                .Select(s => (Resource: index, Stretch: s, By: "others")))
            .Concat(problem.Jobs.SelectMany((job, index) => schedule.Jobs[index].Takes(problem, job)
                .Where(t => t.Stretch.Length > 0)
                .Select(t => (t.Resource, t.Stretch, By: $"job {index}"))));
        return taken
            .GroupBy(t => t.Resource)
            .SelectMany(group => group.OrderBy(t => t.Stretch.From).ToArray() is var inOrder
                ? inOrder.Zip(inOrder.Skip(1)).Where(pair => pair.First.Stretch.Until > pair.Second.Stretch.From)
                    .Select(pair => $"resource {group.Key} is taken by {pair.First.By} {pair.First.Stretch} and by {pair.Second.By} {pair.Second.Stretch}")
                : [])
            .ToArray();
    }
}
