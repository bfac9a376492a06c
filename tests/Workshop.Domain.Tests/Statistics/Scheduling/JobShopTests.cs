using System.Globalization;
using Workshop.Domain.Statistics.Scheduling;

namespace Workshop.Domain.Tests.Statistics.Scheduling;

/// <summary>The published job shop of six jobs on six machines, through the code that plans a week of visits.</summary>
public class JobShopTests
{
    /// <summary>Fisher and Thompson (1963), 6 x 6; see SOURCES.md.</summary>
    private const int PublishedOptimum = 55;

    private static readonly ScheduleEffort Effort = ScheduleEffort.Usual with { Seconds = 60 };

    [Fact]
    public void The_problem_of_Fisher_and_Thompson_ends_at_55_and_not_before()
    {
        var problem = SixBySix();

        var solved = ScheduleSolver.Solve(problem, before: null, Effort)!;

        Assert.Equal(PublishedOptimum, solved.Cost.Ends);
        Assert.True(solved.Proven);
        Assert.Null(Tally.FirstFault(problem, solved.Schedule));
        Assert.Empty(ScheduleCheck.Faults(problem, solved.Schedule));
    }

    [Fact]
    public void A_day_with_a_night_in_the_middle_of_every_machine_ends_a_night_later()
    {
        // On the axis of working time nothing changes, so the optimum is the same number of worked units.
        var (problem, night) = (SixBySix(), new TimeStretch(30, 40));
        var withNight = problem with
        {
            Horizon = problem.Horizon + night.Length,
            Resources = [.. problem.Resources.Select(r =>
                r with { Working = [new TimeStretch(0, night.From), new TimeStretch(night.Until, problem.Horizon + night.Length)] })],
        };

        var solved = ScheduleSolver.Solve(withNight, before: null, Effort)!;

        Assert.Equal(PublishedOptimum + night.Length, solved.Cost.Ends);
        Assert.Null(Tally.FirstFault(withNight, solved.Schedule));
    }

    [Fact]
    public void A_corrupted_schedule_is_caught_by_both_checks()
    {
        var problem = SixBySix();
        var solved = ScheduleSolver.Solve(problem, before: null, Effort)!.Schedule;
        for (var job = 0; job < problem.Jobs.Count; job++)
        {
            // The last operation begins a unit before the one before it has ended.
            var tasks = solved.Jobs[job].Tasks.ToArray();
            tasks[^1] = new TimeStretch(tasks[^2].Until - 1, tasks[^2].Until - 1 + tasks[^1].Length);
            var corrupted = new Schedule([.. solved.Jobs.Select((placed, index) => index == job ? placed with { Tasks = tasks } : placed)]);

            Assert.NotNull(Tally.FirstFault(problem, corrupted));
            Assert.NotEmpty(ScheduleCheck.Faults(problem, corrupted));
        }
    }

    [Fact]
    public void Two_operations_of_one_machine_at_once_are_caught_by_both_checks()
    {
        var problem = SixBySix();
        var atOnce = new Schedule([.. problem.Jobs.Select(job =>
        {
            var (from, tasks) = (0, new List<TimeStretch>());
            foreach (var task in job.Tasks)
            {
                tasks.Add(new TimeStretch(from, from + task.Duration));
                from += task.Duration;
            }

            return new PlacedJob(tasks, [.. job.Choices.Select(c => c[0])]);
        })]);

        Assert.NotNull(Tally.FirstFault(problem, atOnce));
        Assert.NotEmpty(ScheduleCheck.Faults(problem, atOnce));
    }

    [Fact]
    public void One_search_with_one_seed_finds_the_same_schedule_again()
    {
        var alone = Effort with { Workers = 1 };
        var (one, other) = (ScheduleSolver.Solve(SixBySix(), null, alone)!, ScheduleSolver.Solve(SixBySix(), null, alone)!);

        Assert.True(one.Schedule.Jobs.Zip(other.Schedule.Jobs).All(pair => pair.First.IsAs(pair.Second)));
    }

    private static ScheduleProblem SixBySix()
    {
        var operations = CheckValues.Lines("scheduling/ft06.csv").Skip(1).Where(line => line.Length > 0)
            .Select(line => line.Split(',').Select(cell => int.Parse(cell, CultureInfo.InvariantCulture)).ToArray())
            .ToList();
        return new ScheduleProblem(
            operations.Sum(o => o[3]),
            [.. operations.Select(o => o[2]).Distinct().Order().Select(_ => new ScheduleResource(Working: null, Taken: []))],
            [.. operations.GroupBy(o => o[0]).Select(job => new ScheduleJob(
                [.. job.OrderBy(o => o[1]).Select(o => new ScheduleTask(o[3]) { Worker = o[1] })],
                [.. job.OrderBy(o => o[1]).Select(o => new[] { o[2] })],
                []))],
            []);
    }
}
