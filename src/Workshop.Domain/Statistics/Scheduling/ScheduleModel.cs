using Google.OrTools.Sat;

namespace Workshop.Domain.Statistics.Scheduling;

/// <summary>
/// A schedule problem in the terms of CP-SAT: interval variables that do not overlap on each resource. A worker's tasks are
/// intervals on the worker's own axis, tied to real time part by part.
/// </summary>
internal sealed class ScheduleModel
{
    private readonly ScheduleProblem problem;
    private readonly WorkingAxis?[] axes;
    private readonly List<IntervalVar>[] onResource;
    private readonly List<(BoolVar Picked, int Resource, int Units)> worked = [];
    private readonly JobVariables[] jobs;
    private readonly List<(IntVar Variable, Func<Schedule, long> Value)> known = [];

    public ScheduleModel(ScheduleProblem problem)
    {
        this.problem = problem;
        axes = [.. problem.Resources.Select((_, index) => problem.AxisOf(index))];
        onResource = [.. problem.Resources.Select((_, index) => Taken(index))];
        jobs = [.. problem.Jobs.Select(Add)];
        foreach (var intervals in onResource.Where(i => i.Count > 1))
        {
            Model.AddNoOverlap(intervals);
        }

        Ends = Known(Model.NewIntVar(0, problem.Horizon, "ends"), s => s.Jobs.Max(j => j.Tasks[^1].Until));
        foreach (var job in jobs)
        {
            Model.Add(Ends >= job.Ends[^1]);
        }

        Unevenness = AddUnevenness();
    }

    public CpModel Model { get; } = new();

    public IntVar Ends { get; }

    public IntVar Unevenness { get; }

    /// <summary>Counts the jobs that are not where a schedule has them.</summary>
    public LinearExpr MovedFrom(Schedule before)
    {
        var moved = new List<BoolVar>();
        for (var job = 0; job < jobs.Length; job++)
        {
            var at = job;
            var stays = Known(Model.NewBoolVar($"stays {job}"), s => s.Jobs[at].IsAs(before.Jobs[at]) ? 1 : 0);
            for (var task = 0; task < jobs[job].Starts.Length; task++)
            {
                Model.Add(jobs[job].Starts[task] == before.Jobs[job].Tasks[task].From).OnlyEnforceIf(stays);
                Model.Add(jobs[job].Ends[task] == before.Jobs[job].Tasks[task].Until).OnlyEnforceIf(stays);
            }

            foreach (var (resource, picked) in jobs[job].Picks.Select((picks, choice) => (before.Jobs[job].Chosen[choice], picks)))
            {
                if (picked.TryGetValue(resource, out var literal))
                {
                    Model.AddImplication(stays, literal);
                }
                else
                {
                    Model.AddBoolAnd([stays.Not()]);
                }
            }

            var moves = Known(Model.NewBoolVar($"moves {job}"), s => s.Jobs[at].IsAs(before.Jobs[at]) ? 0 : 1);
            Model.Add(moves + stays == 1);
            moved.Add(moves);
        }

        return LinearExpr.Sum(moved);
    }

    /// <summary>
    /// Where the solver is to look first: a value for every variable, since one that it has to find by itself can take it longer than
    /// all the rest.
    /// </summary>
    public void Hint(Schedule schedule)
    {
        Model.ClearHints();
        foreach (var (variable, value) in known)
        {
            Model.AddHint(variable, value(schedule));
        }
    }

    public Schedule Read(CpSolver solver) => new([.. jobs.Select(job => new PlacedJob(
        [.. job.Starts.Zip(job.Ends).Select(t => new TimeStretch((int)solver.Value(t.First), (int)solver.Value(t.Second)))],
        [.. job.Picks.Select(picks => picks.First(p => solver.BooleanValue(p.Value)).Key)]))]);

    private List<IntervalVar> Taken(int resource)
    {
        var taken = TimeStretch.Joined(problem.Resources[resource].Taken, new TimeStretch(0, problem.Horizon));
        var onAxis = axes[resource] is { } axis
            ? TimeStretch.Joined(
                taken.Select(t => new TimeStretch(axis.WorkedBefore(t.From), axis.WorkedBefore(t.Until))), new TimeStretch(0, axis.Length))
            : taken;
        return onAxis.Select(t => Model.NewFixedSizeIntervalVar(t.From, t.Length, $"taken {resource}")).ToList();
    }

    private JobVariables Add(ScheduleJob job, int index)
    {
        var variables = new JobVariables(
            [.. job.Tasks.Select((t, i) => Known(Model.NewIntVar(t.NotBefore, problem.Horizon, $"start {index}.{i}"), s => s.Jobs[index].Tasks[i].From))],
            [.. job.Tasks.Select((t, i) => Known(
                Model.NewIntVar(0, Math.Min(problem.Horizon, t.EndsBy ?? problem.Horizon), $"end {index}.{i}"), s => s.Jobs[index].Tasks[i].Until))],
            [.. job.Choices.Select((choice, c) => choice.Distinct().ToDictionary(
                r => r, r => Known(Model.NewBoolVar($"pick {index}.{c}.{r}"), s => s.Jobs[index].Chosen[c] == r ? 1 : 0)))]);
        foreach (var picks in variables.Picks)
        {
            Model.AddExactlyOne(picks.Values);
        }

        foreach (var tied in job.Tied)
        {
            foreach (var resource in variables.Picks[tied.Choice].Keys.Intersect(variables.Picks[tied.To].Keys))
            {
                Model.AddImplication(variables.Picks[tied.Choice][resource], variables.Picks[tied.To][resource]);
            }
        }

        for (var task = 0; task < job.Tasks.Count; task++)
        {
            AddTask(job, variables, index, task);
        }

        foreach (var hold in job.Holds)
        {
            AddHold(variables, hold, index);
        }

        return variables;
    }

    private void AddTask(ScheduleJob job, JobVariables variables, int index, int at)
    {
        var (task, start, end) = (job.Tasks[at], variables.Starts[at], variables.Ends[at]);
        if (at > 0)
        {
            Model.Add(start >= variables.Ends[at - 1] + task.MinGap);
            if (task.MaxGap is { } most)
            {
                Model.Add(start <= variables.Ends[at - 1] + most);
            }
        }

        if (task.Starts is { } starts)
        {
            Model.AddLinearExpressionInDomain(start, Google.OrTools.Util.Domain.FromValues([.. starts.Select(s => (long)s)]));
        }

        if (task.Within is { } within)
        {
            AddWithin(within, index, at, start, end);
        }

        if (task.Worker is not { } worker || task.Duration == 0)
        {
            Model.Add(end >= start + task.Duration);
            Model.Add(end <= start + (task.Longest ?? task.Duration));
            return;
        }

        if (task.Unbroken)
        {
            Model.Add(end == start + task.Duration);
        }

        foreach (var (resource, picked) in variables.Picks[worker])
        {
            worked.Add((picked, resource, task.Duration));
            if (axes[resource] is { } axis)
            {
                AddOnAxis(axis, resource, worker, (index, at), task.Duration, start, end, picked);
            }
            else
            {
                onResource[resource].Add(Model.NewOptionalIntervalVar(start, task.Duration, end, picked, $"work {index}.{at}.{resource}"));
            }
        }
    }

    private void AddWithin(IReadOnlyList<TimeStretch> within, int job, int task, IntVar start, IntVar end)
    {
        var inOne = within.Select((one, index) => Known(
            Model.NewBoolVar("within"), s => within.TakeWhile(w => !w.Holds(s.Jobs[job].Tasks[task])).Count() == index ? 1 : 0)).ToArray();
        Model.AddExactlyOne(inOne);
        for (var one = 0; one < inOne.Length; one++)
        {
            Model.Add(start >= within[one].From).OnlyEnforceIf(inOne[one]);
            Model.Add(end <= within[one].Until).OnlyEnforceIf(inOne[one]);
        }
    }

    private void AddOnAxis(
        WorkingAxis axis, int resource, int worker, (int Job, int Task) of, int units, IntVar start, IntVar end, BoolVar picked)
    {
        if (axis.Length < units)
        {
            Model.AddBoolAnd([picked.Not()]);
            return;
        }

        bool Works(Schedule s) => s.Jobs[of.Job].Chosen[worker] == resource;
        int Begun(Schedule s) => Works(s) ? axis.WorkedBefore(s.Jobs[of.Job].Tasks[of.Task].From) : 0;
        var onAxis = Known(Model.NewIntVar(0, axis.Length - units, $"axis {of.Job}.{of.Task}.{resource}"), s => Math.Min(Begun(s), axis.Length - units));
        onResource[resource].Add(Model.NewOptionalFixedSizeIntervalVar(onAxis, units, picked, $"work {of.Job}.{of.Task}.{resource}"));
        var (starts, ends) = (new List<ILiteral>(), new List<ILiteral>());
        for (var part = 0; part < axis.Parts.Count; part++)
        {
            // On a seam between two parts a start belongs to the later one, an end to the earlier.
            var (first, length, shift) = (axis.Before(part), axis.Parts[part].Length, axis.Parts[part].From - axis.Before(part));
            var begins = Known(Model.NewBoolVar("begins"), s => Works(s) && Begun(s) >= first && Begun(s) < first + length ? 1 : 0);
            Model.AddLinearConstraint(onAxis, first, first + length - 1).OnlyEnforceIf(begins);
            Model.Add(start == onAxis + shift).OnlyEnforceIf(begins);
            starts.Add(begins);
            var finishes = Known(Model.NewBoolVar("finishes"), s => Works(s) && Begun(s) + units > first && Begun(s) + units <= first + length ? 1 : 0);
            Model.AddLinearConstraint(onAxis + units, first + 1, first + length).OnlyEnforceIf(finishes);
            Model.Add(end == onAxis + (units + shift)).OnlyEnforceIf(finishes);
            ends.Add(finishes);
        }

        // Exactly one where this worker is picked, none where not.
        Model.AddExactlyOne(starts.Append(picked.Not()));
        Model.AddExactlyOne(ends.Append(picked.Not()));
    }

    private T Known<T>(T variable, Func<Schedule, long> value)
        where T : IntVar
    {
        known.Add((variable, value));
        return variable;
    }

    private void AddHold(JobVariables variables, ResourceHold hold, int index)
    {
        var (start, end) = (variables.Starts[hold.First], variables.Ends[hold.Last]);
        var length = Known(
            Model.NewIntVar(0, problem.Horizon, $"held {index}"), s => s.Jobs[index].Tasks[hold.Last].Until - s.Jobs[index].Tasks[hold.First].From);
        Model.Add(length == end - start);
        foreach (var (resource, picked) in variables.Picks[hold.Choice])
        {
            if (axes[resource] is not null)
            {
                throw new ArgumentException($"Resource {resource} has working time of its own: it works at tasks, it cannot be held.");
            }

            onResource[resource].Add(Model.NewOptionalIntervalVar(start, length, end, picked, $"hold {index}.{resource}"));
        }
    }

    private IntVar AddUnevenness()
    {
        var total = 1 + problem.Loads.Sum(l => l.Weight * ((long)l.Already + problem.Jobs.Sum(j => j.Tasks.Sum(t => (long)t.Duration))));
        var shared = problem.Loads.Count > 0;
        var most = Known(Model.NewIntVar(0, total, "most"), s => shared ? ScheduleCost.Loads(problem, s).Max() : 0);
        var least = Known(Model.NewIntVar(0, total, "least"), s => shared ? ScheduleCost.Loads(problem, s).Min() : 0);
        foreach (var load in problem.Loads)
        {
            var mine = worked.Where(w => w.Resource == load.Resource).ToArray();
            var weighted = LinearExpr.WeightedSum(mine.Select(w => w.Picked), mine.Select(w => (long)w.Units * load.Weight))
                + ((long)load.Weight * load.Already);
            Model.Add(most >= weighted);
            Model.Add(least <= weighted);
        }

        var unevenness = Known(Model.NewIntVar(0, total, "unevenness"), s => shared ? ScheduleCost.Loads(problem, s) is var loads ? loads.Max() - loads.Min() : 0 : 0);
        if (shared)
        {
            Model.Add(unevenness >= most - least);
        }

        return unevenness;
    }

    private sealed record JobVariables(IntVar[] Starts, IntVar[] Ends, Dictionary<int, BoolVar>[] Picks);
}
