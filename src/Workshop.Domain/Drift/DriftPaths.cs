using Workshop.Domain.EngineModels;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Drift;

/// <summary>Engines as data of the interval-path model: a cluster for each engine, a group for each slope of a lobe.</summary>
internal sealed class DriftPaths
{
    private DriftPaths(PathData data, IReadOnlyList<DriftGroup> groups) => (Data, Groups) = (data, groups);

    public PathData Data { get; }

    /// <summary>In the order of the data.</summary>
    public IReadOnlyList<DriftGroup> Groups { get; }

    /// <summary>For a fit: lobes that were read, in classes without a gap; the levels that they stand for are told apart.</summary>
    /// <param name="engines">Of one engine model, or of one valve-train kind.</param>
    /// <param name="uncertainty">Of known changes of shim.</param>
    /// <param name="ratioFree">Whether the share of the stated lever ratio is a parameter; else it is taken as stated.</param>
    public static (DriftPaths Paths, IReadOnlyList<int> Levels, IReadOnlyList<int> Slopes) ForFit(
        IReadOnlyList<DriftEngine> engines, SwapUncertainty uncertainty, bool ratioFree = false)
    {
        var read = engines.Select(engine => (engine, Lobes: engine.Lobes
                .Select(lobe => (lobe.Lobe, Legs: engine.LegsOf(lobe, uncertainty).Where(l => l.Readings.Count > 0).ToList()))
                .Where(l => l.Legs.Count > 0).ToList()))
            .Where(e => e.Lobes.Count > 0).ToList();
        var levels = read.SelectMany(e => e.Lobes)
            .SelectMany(l => l.Legs.Select(leg => DriftClasses.Level(l.Lobe.Valve.Side, leg.Start))).Distinct().Order().ToList();
        var slopes = read.SelectMany(e => e.Lobes).Select(l => DriftClasses.Slope(l.Lobe.Valve.Side)).Distinct().Order().ToList();
        var builder = new Builder(levels.IndexOf, slopes.IndexOf, ratioFree);
        foreach (var (engine, lobes) in read)
        {
            builder.Engine(engine.EngineId, lobes.Select(l => (l.Lobe, (IReadOnlyList<ModelLeg>)l.Legs)));
        }

        return (builder.Build(), levels, slopes);
    }

    /// <summary>For what is known of one engine: all its lobes, in the classes of <see cref="DriftClasses"/>.</summary>
    /// <param name="engine">Which.</param>
    /// <param name="fit">What is known of its engine model; lobes of a side that it does not know are left out.</param>
    public static DriftPaths ForPosterior(DriftEngine engine, DriftFit fit)
    {
        var uncertainty = SwapUncertainty.Of(engine.Specification.ValveTrain, fit.SigmaMm.Value);
        var builder = new Builder(level => level, slope => slope, ratioFree: false);
        builder.Engine(engine.EngineId, engine.Lobes
            .Where(lobe => fit.Knows(lobe.Lobe.Valve.Side))
            .Select(lobe => (lobe.Lobe, engine.LegsOf(lobe, uncertainty)))
            .Where(l => l.Item2.Count > 0));
        return builder.Build();
    }

    private sealed class Builder(Func<int, int> level, Func<int, int> slope, bool ratioFree)
    {
        private readonly PathDataBuilder data = new();
        private readonly List<DriftGroup> groups = [];

        public void Engine(Guid engineId, IEnumerable<(LobeKey Lobe, IReadOnlyList<ModelLeg> Legs)> lobes)
        {
            data.Cluster();
            foreach (var (lobe, legs) in lobes)
            {
                foreach (var section in legs.GroupBy(l => l.Section))
                {
                    data.Group(slope(DriftClasses.Slope(lobe.Valve.Side)));
                    groups.Add(new DriftGroup(engineId, lobe, [.. section], section.Key == legs[^1].Section));
                    foreach (var leg in section)
                    {
                        Take(lobe.Valve.Side, leg);
                    }
                }
            }
        }

        public DriftPaths Build() => new(data.Build(), groups);

        private void Take(Side side, ModelLeg leg)
        {
            data.Leg(level(DriftClasses.Level(side, leg.Start)), leg.AimMm);
            foreach (var reading in leg.Readings)
            {
                // With a free ratio the clearance itself is looked at, and the shims' effect is what the share multiplies.
                var part = ratioFree ? reading.ShimEffectMm : 0;
                data.Reading(reading.X, reading.LowerMm - part, reading.UpperMm - part, reading.Variance, -part);
            }
        }
    }
}

/// <summary>A group of the data: one slope of a lobe.</summary>
/// <param name="EngineId">Which engine.</param>
/// <param name="Lobe">Which lobe.</param>
/// <param name="Legs">Its legs in order.</param>
/// <param name="IsPresent">It is the slope that the lobe has now.</param>
internal sealed record DriftGroup(Guid EngineId, LobeKey Lobe, IReadOnlyList<ModelLeg> Legs, bool IsPresent);
