using CsCheck;
using Workshop.Domain.Statistics.Scheduling;

namespace Workshop.Domain.Tests.Statistics.Scheduling;

public class ScheduleProperties
{
    private const int Weeks = 40;
    private const string Seed = "0000KPyDj2x3";

    private static readonly ScheduleEffort Effort = ScheduleEffort.Usual with { Seconds = 3 };

    [Fact]
    public void What_is_proposed_is_feasible_and_never_worse_than_what_stood() => RandomWeeks.Weeks.Sample(
        week =>
        {
            var solved = ScheduleSolver.Solve(week.Problem, week.Before, Effort)!;

            Assert.True(solved.Feasible);
            Assert.Null(Tally.FirstFault(week.Problem, solved.Schedule));
            Assert.Empty(ScheduleCheck.Faults(week.Problem, solved.Schedule));
            Assert.True(solved.Cost <= ScheduleCost.Of(week.Problem, week.Before, week.Before));
            Assert.Equal(ScheduleCost.Of(week.Problem, solved.Schedule, week.Before), solved.Cost);
        },
        seed: Seed, iter: Weeks, threads: 1);

    /// <summary>Every start and every end a unit earlier or later, every resource exchanged: the two checks agree on all of them.</summary>
    [Fact]
    public void The_check_of_the_service_finds_what_the_tally_finds() => Gen.Select(RandomWeeks.Weeks, Gen.Int[0, 10_000]).Sample(
        (week, at) =>
        {
            if (week.Problem.Jobs.Count == 0)
            {
                return;
            }

            var job = at % week.Before.Jobs.Count;
            var placed = week.Before.Jobs[job];
            var (task, kind) = (at / 7 % placed.Tasks.Count, at / 77 % 4);
            var tasks = placed.Tasks.ToArray();
            tasks[task] = kind switch
            {
                0 => new TimeStretch(tasks[task].From + 1, tasks[task].Until + 1),
                1 => new TimeStretch(tasks[task].From - 1, tasks[task].Until),
                2 => new TimeStretch(tasks[task].From, tasks[task].Until + 1),
                _ => tasks[task],
            };
            int[] chosen = kind == 3 ? [.. placed.Chosen.Reverse()] : [.. placed.Chosen];
            var corrupted = new Schedule([.. week.Before.Jobs.Select((j, index) => index == job ? new PlacedJob(tasks, chosen) : j)]);

            Assert.Equal(
                Tally.FirstFault(week.Problem, corrupted) is null,
                ScheduleCheck.Faults(week.Problem, corrupted).Count == 0);
        },
        seed: Seed, iter: 300);

    [Fact]
    public void Of_a_few_jobs_no_order_ends_earlier_than_the_proposal() => (
        from lengths in Gen.Int[1, 6].Array[1, 5]
        from broken in Gen.Int[1, 6]
        select (lengths, broken)).Sample(
        week =>
        {
            ScheduleResource[] workers =
            [
                new([new(0, week.broken), new(week.broken + 3, 60)], []),
                new([new(2, 10), new(14, 60)], [new(5, 7)]),
            ];
            var problem = new ScheduleProblem(
                60, workers, [.. week.lengths.Select(l => new ScheduleJob([new(l) { Worker = 0 }], [[0, 1]], []))], []);

            var solved = ScheduleSolver.Solve(problem, before: null, Effort)!;

            Assert.True(solved.Proven);
            Assert.Equal(BestByTrying(workers, week.lengths), solved.Cost.Ends);
        },
        seed: Seed, iter: Weeks, threads: 1);

    [Fact]
    public void The_load_is_evened_where_the_end_allows_it()
    {
        ScheduleResource[] workers = [new([new(0, 40)], []), new([new(0, 40)], [])];
        var jobs = Enumerable.Range(0, 4).Select(_ => new ScheduleJob([new(5) { Worker = 0 }], [[0, 1]], [])).ToArray();
        var problem = new ScheduleProblem(40, workers, jobs, [new(0, 1, 10), new(1, 1, 0)]);
        var before = new Schedule([.. Enumerable.Range(0, 4).Select(j => new PlacedJob([new(5 * j, (5 * j) + 5)], [0]))]);

        var solved = ScheduleSolver.Solve(problem, before, Effort)!;

        // Ending at 10 wants two jobs each; the load of 10 beside stays uneven, since the end comes first.
        Assert.Equal(new ScheduleCost(10, 10, 2), solved.Cost);
    }

    [Fact]
    public void Nothing_moves_where_moving_gains_nothing()
    {
        var problem = new ScheduleProblem(
            20, [new(null, []), new(null, [])],
            [new([new(5) { Worker = 0 }], [[0, 1]], []), new([new(8) { Worker = 0, NotBefore = 4 }], [[0, 1]], [])], []);
        var before = new Schedule([new([new(3, 8)], [1]), new([new(4, 12)], [0])]);

        var solved = ScheduleSolver.Solve(problem, before, Effort)!;

        Assert.Equal(new ScheduleCost(12, 0, 0), solved.Cost);
        Assert.True(solved.Proven);
    }

    [Fact]
    public void What_stood_comes_back_where_no_feasible_schedule_exists()
    {
        var problem = new ScheduleProblem(10, [new([new(0, 4)], [])], [new([new(5) { Worker = 0 }], [[0]], [])], []);
        var before = new Schedule([new([new(0, 5)], [0])]);

        var solved = ScheduleSolver.Solve(problem, before, Effort)!;

        Assert.False(solved.Feasible);
        Assert.Same(before, solved.Schedule);
        Assert.Null(ScheduleSolver.Solve(problem, before: null, Effort));
    }

    /// <summary>All assignments in all orders, each job at the first unit that its worker has free for it.</summary>
    private static int BestByTrying(ScheduleResource[] workers, int[] lengths)
    {
        var best = int.MaxValue;
        Try([.. workers.Select(_ => new List<(int From, int Until)>())], 0, 0);
        return best;

        void Try(List<(int From, int Until)>[] busy, int done, int ends)
        {
            if (ends >= best)
            {
                return;
            }

            if (done == (1 << lengths.Length) - 1)
            {
                best = ends;
                return;
            }

            for (var job = 0; job < lengths.Length; job++)
            {
                for (var worker = 0; worker < workers.Length && (done & (1 << job)) == 0; worker++)
                {
                    var units = Units(workers[worker]).ToList();
                    var from = Enumerable.Range(0, units.Count).First(i =>
                        Enumerable.Range(i, lengths[job]).All(k => Free(workers[worker], busy[worker], units[k])));
                    var until = units[from + lengths[job] - 1] + 1;
                    busy[worker].Add((units[from], until));
                    Try(busy, done | (1 << job), Math.Max(ends, until));
                    busy[worker].RemoveAt(busy[worker].Count - 1);
                }
            }
        }
    }

    private static IEnumerable<int> Units(ScheduleResource worker) =>
        Enumerable.Range(0, 60).Where(t => worker.Working!.Any(w => w.From <= t && t < w.Until));

    private static bool Free(ScheduleResource worker, List<(int From, int Until)> busy, int unit) =>
        !worker.Taken.Any(t => t.From <= unit && unit < t.Until) && !busy.Exists(b => b.From <= unit && unit < b.Until);
}
