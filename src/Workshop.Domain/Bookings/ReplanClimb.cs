using Workshop.Domain.Statistics.Scheduling;

namespace Workshop.Domain.Bookings;

/// <summary>
/// Betters a week visit by visit: each is taken out and put into the earliest slot of each technician who is able, where that costs
/// less. Quick and short of the best: the solver begins where it ends, so that a week is bettered on a busy machine too.
/// </summary>
internal sealed class ReplanClimb(ReplanWeek week, ReplanTasks tasks, ScheduleProblem problem)
{
    private const int MostPasses = 4;

    /// <summary>A feasible schedule that costs no more.</summary>
    /// <param name="before">Feasible.</param>
    public Schedule From(Schedule before)
    {
        var (jobs, takes) = (before.Jobs.ToArray(), week.Visits.Select(v => v.Today.Takes).ToArray());
        var cost = ScheduleCost.Of(problem, before, before);
        for (var (pass, bettered) = (0, true); pass < MostPasses && bettered; pass++)
        {
            bettered = false;
            foreach (var index in Enumerable.Range(0, jobs.Length).OrderByDescending(i => jobs[i].Tasks[^1].Until).ToArray())
            {
                var others = WeekReplan.With(week.Floor, takes.Where((_, other) => other != index).SelectMany(t => t));
                foreach (var (placed, plan) in Places(others, index))
                {
                    var tried = new Schedule(jobs.Select((job, i) => i == index ? placed : job).ToArray());
                    if (ScheduleCost.Of(problem, tried, before) is var costs && costs < cost)
                    {
                        (jobs[index], takes[index], cost, bettered) = (placed, plan.Takes, costs, true);
                    }
                }
            }
        }

        return new Schedule(jobs);
    }

    /// <summary>The visit in the earliest slot of each technician who is able.</summary>
    private (PlacedJob Placed, VisitPlan Plan)[] Places(WorkshopFloor others, int index)
    {
        var (visit, job) = (week.Visits[index], problem.Jobs[index]);
        var alone = problem with { Jobs = [job] };
        var planner = new PhasePlanner(others, visit.Shape, visit.Needs, visit.Terms);
        return job.Choices[ReplanLayout.Technician]
            .Select(technician => tasks.Timeline(technician).Resource)
            .Where(technician => visit.Needs.TechnicianLacks(technician).Count == 0)
            .SelectMany(technician => SlotSearch.Find(planner, new SlotQuery(1, SlotSearch.UsualApartMinutes, visit.BayId, technician.Id)).Slots)
            .Select(slot => (Placed: tasks.Placed(visit, slot.Plan), slot.Plan))
            .Where(place => place.Placed is not null && ScheduleCheck.Faults(alone, new Schedule([place.Placed])).Count == 0)
            .Select(place => (place.Placed!, place.Plan))
            .ToArray();
    }
}
