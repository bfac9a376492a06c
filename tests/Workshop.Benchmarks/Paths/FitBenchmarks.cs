using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Jobs;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Benchmarks.Paths;

/// <summary>
/// The interval-censored fit: its start from the middles, the search with its final log-likelihood, the standard errors beside
/// it. The cost should grow in proportion to the valves.
/// </summary>
[SimpleJob(RuntimeMoniker.HostProcess, launchCount: 1, warmupCount: 1, iterationCount: 3)]
[MemoryDiagnoser]
public class FitBenchmarks
{
    private PathData data = new PathDataBuilder().Build();

    [Params(1000, 8000, 64000)]
    public int Valves { get; set; }

    [Params(0.01, 0.05)]
    public double Step { get; set; }

    [GlobalSetup]
    public void Setup() => data = BenchmarkFleet.Build(Valves, Step);

    [Benchmark]
    public double Middles() => IntervalPaths.FitMiddles(data).Value.Sigma;

    [Benchmark]
    public double Search() => IntervalPaths.Fit(data, new PathOptions { StandardErrors = false }).Value.LogLikelihood;

    [Benchmark]
    public double SearchAndStandardErrors() => IntervalPaths.Fit(data).Value.LogLikelihood;

    [Benchmark]
    public double LogLikelihood() => IntervalPaths.LogLikelihood(data, BenchmarkFleet.Truth);
}
