using Workshop.Domain.Statistics.Scheduling;

namespace Workshop.Domain.Tests.Statistics.Scheduling;

/// <summary>
/// Whether a schedule keeps to its problem, by marking unit after unit: written from what the problem says, sharing nothing with
/// the solver, its model or the service's own check.
/// </summary>
internal static class Tally
{
    public static string? FirstFault(ScheduleProblem problem, Schedule schedule)
    {
        var free = problem.Resources.Select(r => new bool[problem.Horizon]).ToArray();
        for (var r = 0; r < free.Length; r++)
        {
            for (var t = 0; t < problem.Horizon; t++)
            {
                free[r][t] = !problem.Resources[r].Taken.Any(s => s.From <= t && t < s.Until);
            }
        }

        for (var j = 0; j < problem.Jobs.Count; j++)
        {
            if (FaultOf(problem, problem.Jobs[j], schedule.Jobs[j], free) is { } fault)
            {
                return $"job {j}: {fault}";
            }
        }

        return null;
    }

    private static string? FaultOf(ScheduleProblem problem, ScheduleJob job, PlacedJob placed, bool[][] free)
    {
        for (var c = 0; c < job.Choices.Count; c++)
        {
            if (!job.Choices[c].Contains(placed.Chosen[c]))
            {
                return "a resource that may not serve";
            }
        }

        foreach (var tied in job.Tied)
        {
            if (job.Choices[tied.To].Any(r => r == placed.Chosen[tied.Choice]) && placed.Chosen[tied.To] != placed.Chosen[tied.Choice])
            {
                return "two resources where one is asked for";
            }
        }

        for (var i = 0; i < job.Tasks.Count; i++)
        {
            var (task, from, until) = (job.Tasks[i], placed.Tasks[i].From, placed.Tasks[i].Until);
            if (from < task.NotBefore || from < 0 || until > problem.Horizon || until > (task.EndsBy ?? int.MaxValue) || until < from)
            {
                return "outside its time";
            }

            if (i > 0 && (from - placed.Tasks[i - 1].Until < task.MinGap || from - placed.Tasks[i - 1].Until > (task.MaxGap ?? int.MaxValue)))
            {
                return "out of order, or too long after the one before";
            }

            if (task.Starts is { } starts && !starts.Contains(from))
            {
                return "starts where it may not";
            }

            if (task.Within is { } within && !within.Any(w => from >= w.From && until <= w.Until))
            {
                return "lies where it may not";
            }

            if (task.Worker is not { } worker || task.Duration == 0)
            {
                if (until - from < task.Duration || until - from > (task.Longest ?? task.Duration))
                {
                    return "of another length";
                }

                continue;
            }

            var who = placed.Chosen[worker];
            var at = Enumerable.Range(from, until - from).Where(t => Works(problem.Resources[who], t)).ToList();
            if (at.Count != task.Duration || at[0] != from || at[^1] != until - 1 || (task.Unbroken && until - from != task.Duration))
            {
                return "not worked at as long as it takes";
            }

            if (!at.TrueForAll(t => Mark(free[who], t)))
            {
                return $"worker {who} at two things";
            }
        }

        return job.Holds.Any(h => !Enumerable
            .Range(placed.Tasks[h.First].From, placed.Tasks[h.Last].Until - placed.Tasks[h.First].From)
            .All(t => Mark(free[placed.Chosen[h.Choice]], t)))
            ? "a place taken twice"
            : null;
    }

    private static bool Works(ScheduleResource resource, int unit) =>
        resource.Working is null || resource.Working.Any(s => s.From <= unit && unit < s.Until);

    private static bool Mark(bool[] free, int unit)
    {
        var was = free[unit];
        free[unit] = false;
        return was;
    }
}
