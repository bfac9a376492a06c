using Workshop.Domain.EngineModels;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Drift;

/// <summary>
/// What all engine models of one valve-train kind show together, and how far models lie apart: what a model with few readings
/// borrows from. Levels are offsets from the clearance aimed at, so that models with other limits compare.
/// </summary>
/// <param name="Kind">Which kind.</param>
/// <param name="Models">Models whose own fits tell how far they lie apart.</param>
/// <param name="Together">The fit of all readings together.</param>
/// <param name="Priors">Normal densities centred on it.</param>
public sealed record DriftPool(
    ValveTrainKind Kind, int Models, DriftFit Together, IReadOnlyList<PoolPrior> Priors)
{
    /// <summary>However alike the models are, a logarithm is not held more closely than this.</summary>
    private const double LeastDeviationOfLogs = 0.3;

    private const double LeastDeviationOfSlopeMm = 0.001;

    private const double LeastDeviationOfLevelMm = 0.005;

    /// <summary>A deviation fitted as 0 has no logarithm; it is taken as this, in mm.</summary>
    private const double LeastDeviationMm = 0.0005;

    /// <summary>The pool of a kind.</summary>
    /// <param name="kind">Which kind.</param>
    /// <param name="together">The fit of all readings of all models of it.</param>
    /// <param name="models">Their own fits; those that borrow tell nothing of how far models lie apart and are passed over.</param>
    public static DriftPool Of(ValveTrainKind kind, DriftFit together, IReadOnlyCollection<DriftFit> models)
    {
        ArgumentNullException.ThrowIfNull(together);
        ArgumentNullException.ThrowIfNull(models);
        var own = models.Where(m => m.Source == FitSource.OwnReadings).ToList();
        var priors = new List<PoolPrior>();
        foreach (var level in together.Levels)
        {
            var place = DriftClasses.Level(level.Side, level.Start);
            var there = own.SelectMany(m => m.Levels.Where(l => (l.Side, l.Start) == (level.Side, level.Start))).ToList();
            priors.Add(new PoolPrior(PriorOn.LevelMean, place, level.OffsetMm.Value, Math.Max(
                LeastDeviationOfLevelMm, Spread(there.Select(l => l.OffsetMm.Value)) ?? level.DeviationMm.Value)));
            priors.Add(LogPrior(PriorOn.LogLevelDeviation, place, level.DeviationMm.Value, there.Select(l => l.DeviationMm.Value)));
        }

        foreach (var slope in together.Slopes)
        {
            var place = DriftClasses.Slope(slope.Side);
            var there = own.SelectMany(m => m.Slopes.Where(s => s.Side == slope.Side)).ToList();
            priors.Add(new PoolPrior(PriorOn.SlopeMean, place, slope.MeanMm.Value, Math.Max(
                LeastDeviationOfSlopeMm, Spread(there.Select(s => s.MeanMm.Value)) ?? slope.DeviationMm.Value)));
            priors.Add(LogPrior(PriorOn.LogSlopeDeviation, place, slope.DeviationMm.Value, there.Select(s => s.DeviationMm.Value)));
        }

        priors.Add(LogPrior(PriorOn.LogSigma, 0, together.SigmaMm.Value, own.Select(m => m.SigmaMm.Value)));
        priors.Add(LogPrior(PriorOn.LogClusterDeviation, 0, together.BetweenEnginesMm.Value, own.Select(m => m.BetweenEnginesMm.Value)));
        return new DriftPool(kind, own.Count, together, priors);
    }

    private static PoolPrior LogPrior(PriorOn on, int place, double centre, IEnumerable<double> models) => new(
        on, place, Log(centre), Math.Max(LeastDeviationOfLogs, Spread(models.Select(Log)) ?? 0));

    private static double Log(double value) => Math.Log(Math.Max(LeastDeviationMm, value));

    /// <summary>Standard deviation of the models; nothing where there are not two.</summary>
    private static double? Spread(IEnumerable<double> values)
    {
        var all = values.ToList();
        return all.Count < 2 ? null : Math.Sqrt(all.Sum(v => (v - all.Average()) * (v - all.Average())) / (all.Count - 1));
    }
}

/// <summary>A normal density of a parameter or of its logarithm.</summary>
/// <param name="On">Which parameter.</param>
/// <param name="Place">Its place by <see cref="DriftClasses"/>; 0 where there is one only.</param>
/// <param name="Centre">Mean.</param>
/// <param name="Deviation">Standard deviation.</param>
public sealed record PoolPrior(PriorOn On, int Place, double Centre, double Deviation);
