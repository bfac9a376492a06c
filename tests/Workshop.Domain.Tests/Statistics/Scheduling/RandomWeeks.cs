using CsCheck;
using Workshop.Domain.Statistics.Scheduling;

namespace Workshop.Domain.Tests.Statistics.Scheduling;

/// <summary>Small weeks of a made-up workshop: two bays, two or three workers with breaks and nights, one tool, a place to stand.</summary>
internal static class RandomWeeks
{
    private const int DayLength = 16;
    private const int Days = 4;
    private const int Horizon = DayLength * Days;

    /// <summary>A problem, and a schedule of it that stands: each job at the first place that a plain search finds.</summary>
    public static readonly Gen<(ScheduleProblem Problem, Schedule Before)> Weeks =
        from workers in Gen.Int[2, 3]
        from absent in Gen.Int[-1, Days - 1]
        from taken in Gen.Int[0, Horizon - 4]
        from jobs in Gen.Select(
            Gen.Int[0, 3], Gen.Int[1, 12], Gen.Int[0, 3], Gen.Int[0, 2], Gen.Int[0, 20], Gen.Int[0, 7]).Array[1, 5]
        select Stand(new ScheduleProblem(
            Horizon,
            [
                .. Enumerable.Range(0, workers).Select(w => new ScheduleResource(
                    [.. Enumerable.Range(0, Days).Where(d => w > 0 || d != absent).SelectMany(d => new TimeStretch[]
                        { new((d * DayLength) + 2, (d * DayLength) + 6), new((d * DayLength) + 7, (d * DayLength) + 11) })],
                    w == 1 ? [new TimeStretch(taken, taken + 4)] : [])),
                new ScheduleResource(null, [new TimeStretch(taken, taken + 3)]),
                new ScheduleResource(null, []),
                new ScheduleResource(null, []),
                new ScheduleResource(null, []),
            ],
            [.. jobs.Select(j => Job(workers, j))],
            [.. Enumerable.Range(0, workers).Select(w => new WorkerLoad(w, 1, w))]));

    private static ScheduleJob Job(int workers, (int Soak, int Work, int Cure, int Ride, int NotBefore, int Wish) with)
    {
        TimeStretch[] open = [.. Enumerable.Range(0, Days).Select(d => new TimeStretch((d * DayLength) + 1, (d * DayLength) + 12))];
        int[] anyone = with.Wish == 0 ? [1] : [.. Enumerable.Range(0, workers)];
        ScheduleTask[] tasks =
        [
            new(0) { Within = open, NotBefore = with.NotBefore, Starts = [.. Enumerable.Range(0, Horizon).Where(t => t % 2 == 0)] },
            new(with.Soak * 3) { Longest = Horizon, MaxGap = 0 },
            new(with.Work) { Worker = 0, MaxGap = 0 },
            new(with.Cure),
            new(with.Ride) { Worker = 0, Unbroken = true },
            new(1) { Within = open, EndsBy = with.Wish == 1 ? Horizon - DayLength : null },
        ];
        int[][] choices = [anyone, with.Wish == 2 ? [workers] : [workers, workers + 1], [workers + 2], [workers + 3]];
        ResourceHold[] holds = [new(1, 2, 5), new(2, 1, 1), new(3, 2, 2)];
        return with.Wish > 4 ? new ScheduleJob(tasks, choices, holds) : new ScheduleJob(tasks, choices[..3], holds[..2]);
    }

    /// <summary>Jobs that find no place are left out.</summary>
    private static (ScheduleProblem, Schedule) Stand(ScheduleProblem problem)
    {
        var (jobs, placed) = (new List<ScheduleJob>(), new List<PlacedJob>());
        foreach (var job in problem.Jobs)
        {
            var first = Places(problem, job).FirstOrDefault(place => Tally.FirstFault(
                problem with { Jobs = [.. jobs, job] }, new Schedule([.. placed, place])) is null);
            if (first is not null)
            {
                jobs.Add(job);
                placed.Add(first);
            }
        }

        return (problem with { Jobs = jobs }, new Schedule(placed));
    }

    private static IEnumerable<PlacedJob> Places(ScheduleProblem problem, ScheduleJob job) =>
        from arrival in Enumerable.Range(0, Horizon).Where(t => t % 2 == 0)
        from work in Enumerable.Range(0, Horizon).Where(t => t >= arrival + job.Tasks[1].Duration)
        from worker in job.Choices[0]
        from bay in job.Choices[1]
        let place = Place(problem, job, arrival, work, worker, bay)
        where place is not null
        select place;

    private static PlacedJob? Place(ScheduleProblem problem, ScheduleJob job, int arrival, int work, int worker, int bay)
    {
        var worked = After(problem.Resources[worker], work, job.Tasks[2].Duration);
        if (worked is not { } afterWork || afterWork.From != work)
        {
            return null;
        }

        var cured = new TimeStretch(afterWork.Until, afterWork.Until + job.Tasks[3].Duration);
        var ridden = job.Tasks[4].Duration == 0
            ? new TimeStretch(cured.Until, cured.Until)
            : Enumerable.Range(cured.Until, Math.Max(0, Horizon - cured.Until))
                .Select(t => After(problem.Resources[worker], t, job.Tasks[4].Duration))
                .FirstOrDefault(t => t?.Length == job.Tasks[4].Duration);
        if (ridden is not { } ride)
        {
            return null;
        }

        var handOver = ride.Until;
        while (!job.Tasks[5].Within!.Any(w => w.From <= handOver && handOver + 1 <= w.Until))
        {
            if (++handOver > Horizon)
            {
                return null;
            }
        }

        return new PlacedJob(
            [new(arrival, arrival), new(arrival, work), afterWork, cured, ride, new(handOver, handOver + 1)],
            [worker, bay, .. job.Choices.Skip(2).Select(c => c[0])]);
    }

    private static TimeStretch? After(ScheduleResource worker, int from, int units)
    {
        var at = Enumerable.Range(from, Math.Max(0, Horizon - from))
            .Where(t => worker.Working!.Any(w => w.From <= t && t < w.Until)).Take(units).ToList();
        return at.Count == units ? new TimeStretch(at[0], at[^1] + 1) : null;
    }
}
