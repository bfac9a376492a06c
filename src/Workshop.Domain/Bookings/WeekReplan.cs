using NodaTime;
using Workshop.Domain.Statistics.Scheduling;

namespace Workshop.Domain.Bookings;

/// <summary>
/// Proposes where the visits of a week could go instead: so that the last of them is handed over earliest, then with the load of
/// the technicians most even, then with the fewest visits moved. Wishes are kept. What comes out of the solver is planned once
/// more, visit by visit, by <see cref="PhasePlanner"/>, and only what that allows is proposed.
/// </summary>
public static class WeekReplan
{
    /// <summary>The proposal; it is the plan as it stands where nothing better is found.</summary>
    /// <param name="week">Visits that may be moved, and what everything else has taken.</param>
    /// <param name="effort">How long to look.</param>
    public static ReplanProposal Propose(ReplanWeek week, ScheduleEffort effort)
    {
        ArgumentNullException.ThrowIfNull(week);
        var tasks = new ReplanTasks(week);
        var standing = week.Visits.Select(v => (Visit: v, Placed: tasks.Placed(v, v.Today))).ToArray();

        // A plan that cannot be told in tasks stays where it is; a visit whose own plan breaks a rule is moved where it can be.
        var kept = standing.Where(s => s.Placed is null).Select(s => s.Visit).ToArray();
        var movable = standing.Where(s => s.Placed is not null).ToArray();
        var around = new ReplanWeek(
            week.Week, With(week.Floor, kept.SelectMany(v => v.Today.Takes)), movable.Select(m => m.Visit).ToArray());
        tasks = new ReplanTasks(around);
        var problem = tasks.Problem(around.Visits);
        var before = new Schedule(movable.Select(m => m.Placed!).ToArray());
        var broken = movable
            .Where((m, index) => ScheduleCheck.Faults(problem with { Jobs = [problem.Jobs[index]] }, new Schedule([m.Placed!])).Count > 0)
            .Select(m => m.Visit.Number)
            .ToArray();
        var visits = movable.Select(m => m.Visit).ToArray();
        var climbed = broken.Length > 0 ? null : new ReplanClimb(around, tasks, problem).From(before);
        var solved = ScheduleSolver.Solve(problem, before, effort, climbed)!;
        var today = Say(week, tasks, visits.Select(v => new ReplannedVisit(v, v.Today)).ToArray(), kept, broken, solved.Proven);
        if (!solved.Feasible || Planned(around, tasks, problem, visits, before, solved.Schedule) is not { } planned)
        {
            return today;
        }

        var proposed = Say(week, tasks, planned, kept, broken, solved.Proven);
        return broken.Length > 0 || IsBetter(proposed, today) ? proposed : today;
    }

    private static bool IsBetter(ReplanProposal proposed, ReplanProposal today) =>
        proposed.EndsProposed < today.EndsToday
        || (proposed.EndsProposed == today.EndsToday && Unevenness(proposed.Loads) < Unevenness(today.Loads));

    /// <summary>Largest less smallest share of the available time that is taken as proposed.</summary>
    private static double Unevenness(IEnumerable<ReplannedLoad> loads)
    {
        var shares = loads.Where(l => l.AvailableMinutes > 0).Select(l => l.ProposedMinutes / (double)l.AvailableMinutes).ToArray();
        return shares.Length == 0 ? 0 : shares.Max() - shares.Min();
    }

    /// <summary>
    /// Plans that were proposed earlier, on what is free now. Each in its visit's place; nothing for one that no longer keeps to the
    /// rules: its hours, its items or its wishes have changed. Whether they go together is for whoever writes them.
    /// </summary>
    /// <param name="week">The visits that are to be moved, and what everything else has taken.</param>
    /// <param name="wanted">For each of them: its phases, and what they take.</param>
    public static IReadOnlyList<VisitPlan?> Accept(ReplanWeek week, IReadOnlyList<VisitPlan> wanted)
    {
        ArgumentNullException.ThrowIfNull(week);
        ArgumentNullException.ThrowIfNull(wanted);

        // What others hold is looked at apart, so that it can be said who holds it.
        var tasks = new ReplanTasks(week);
        var problem = tasks.Problem(week.Visits);
        return week.Visits.Select((visit, index) =>
            tasks.Placed(visit, wanted[index]) is { } placed
            && ScheduleCheck.Faults(problem with { Jobs = [problem.Jobs[index]] }, new Schedule([placed])).Count == 0
                ? tasks.PlanOf(visit, placed)
                : null).ToArray();
    }

    /// <summary>The floor with more of it taken.</summary>
    public static WorkshopFloor With(WorkshopFloor floor, IEnumerable<Take> takes)
    {
        ArgumentNullException.ThrowIfNull(floor);
        var taken = takes.ToLookup(t => t.ResourceId, t => t.Span);
        return floor with { Resources = floor.Resources.Select(r => r.With(taken[r.Resource.Id])).ToArray() };
    }

    /// <summary>Each visit that moves, planned at its new start among all others where they are to be; nothing where one does not fit.</summary>
    private static ReplannedVisit[]? Planned(
        ReplanWeek week, ReplanTasks tasks, ScheduleProblem problem, ReplanVisit[] visits, Schedule before, Schedule after)
    {
        var takes = visits.Select((visit, index) => after.Jobs[index].IsAs(before.Jobs[index])
            ? visit.Today.Takes
            : TakesOf(tasks, after.Jobs[index].Takes(problem, problem.Jobs[index]))).ToArray();
        var plans = visits.Select(v => v.Today).ToArray();
        var inOrder = Enumerable.Range(0, visits.Length)
            .Where(i => !after.Jobs[i].IsAs(before.Jobs[i]))
            .OrderBy(i => tasks.Start(visits[i], after.Jobs[i]).Work);
        foreach (var index in inOrder)
        {
            var floor = With(week.Floor, takes.Where((_, other) => other != index).SelectMany(t => t));
            var (work, arrives) = tasks.Start(visits[index], after.Jobs[index]);
            var (technician, bay) = (after.Jobs[index].Chosen[ReplanLayout.Technician], after.Jobs[index].Chosen[ReplanLayout.Bay]);
            var visit = visits[index];
            var planned = new PhasePlanner(floor, visit.Shape, visit.Needs, visit.Terms with { ReadyBy = Later(visit.Terms.ReadyBy, visit.Today.ReadyAt) })
                .Plan(floor.Resources[bay], floor.Resources[technician], work, arrives);
            if (planned.Plan is not { } plan)
            {
                return null;
            }

            (plans[index], takes[index]) = (plan, plan.Takes);
        }

        return visits.Select((visit, index) => new ReplannedVisit(visit, IsSame(plans[index], visit.Today) ? visit.Today : plans[index])).ToArray();
    }

    private static ReplanProposal Say(
        ReplanWeek week, ReplanTasks tasks, ReplannedVisit[] movable, ReplanVisit[] kept, int[] broken, bool proven)
    {
        var visits = movable.Concat(kept.Select(v => new ReplannedVisit(v, v.Today))).OrderBy(v => v.Proposed.WorkStartsAt).ThenBy(v => v.Visit.Number).ToArray();
        var loads = new ReplanTasks(week).Loads().Select(load =>
        {
            var technician = tasks.Timeline(load.Index).Resource;
            return new ReplannedLoad(
                technician,
                load.Available,
                load.Taken + Minutes(visits.Select(v => v.Visit.Today), technician.Id),
                load.Taken + Minutes(visits.Select(v => v.Proposed), technician.Id));
        }).ToArray();
        return new ReplanProposal(
            visits,
            visits.Length == 0 ? null : visits.Max(v => v.Visit.Today.ReadyAt),
            visits.Length == 0 ? null : visits.Max(v => v.Proposed.ReadyAt),
            loads,
            broken,
            proven);
    }

    private static int Minutes(IEnumerable<VisitPlan> plans, Guid technician) =>
        (int)plans.SelectMany(p => p.Takes).Where(t => t.ResourceId == technician).Sum(t => t.Span.Duration.TotalMinutes);

    private static Take[] TakesOf(ReplanTasks tasks, IEnumerable<(int Resource, TimeStretch Stretch)> taken) => taken
        .Where(t => t.Stretch.Length > 0)
        .Select(t => new Take(VisitPhase.Work, tasks.Timeline(t.Resource).Resource.Id, tasks.IntervalOf(t.Stretch)))
        .ToArray();

    private static bool IsSame(VisitPlan one, VisitPlan other) => one.Phases.SequenceEqual(other.Phases) && one.Takes.ToHashSet().SetEquals(other.Takes);

    private static Instant? Later(Instant? promised, Instant today) => promised is { } by && by < today ? today : promised;
}
