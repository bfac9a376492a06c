using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Jobs;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Benchmarks.Paths;

/// <summary>One valve after a new reading, by one thread: its posterior, a probability at a distance, the leaving distances.</summary>
[SimpleJob(RuntimeMoniker.HostProcess, launchCount: 1, warmupCount: 3, iterationCount: 8)]
[MemoryDiagnoser]
public class PosteriorBenchmarks
{
    private const int Valves = 200;

    private PathData data = new PathDataBuilder().Build();

    [Params(0.01, 0.05)]
    public double Step { get; set; }

    [GlobalSetup]
    public void Setup() => data = BenchmarkFleet.Build(Valves, Step);

    [Benchmark(OperationsPerInvoke = Valves)]
    public double PosteriorAndOneDistance() => Sum(posterior => posterior.LeftBy(5, 8, 0.20, 0.40));

    [Benchmark(OperationsPerInvoke = Valves)]
    public double PosteriorAndThreeLeavingDistances() =>
        Sum(posterior => posterior.LeavingDistances(5, 0.20, 0.40, [0.1, 0.5, 0.9], 20).Sum(x => x ?? 20));

    [Benchmark(OperationsPerInvoke = Valves)]
    public double PosteriorAndPredictiveP() => Sum(posterior => posterior.PredictiveP(7.5, 0.25, 0.26));

    private double Sum(Func<GroupPosterior, double> of)
    {
        var sum = 0.0;
        for (var valve = 0; valve < Valves; valve++)
        {
            sum += of(IntervalPaths.Posterior(data, BenchmarkFleet.Truth, valve));
        }

        return sum;
    }
}
