using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Drift;

/// <summary>
/// Fills the parameters of a fit up to all classes, so that a kind of level which first appears after the fit has one: from the
/// pool where there is one, from the other side, else so wide that the first reading decides.
/// </summary>
internal sealed class ParameterCompletion(IReadOnlyList<int> levels, IReadOnlyList<int> slopes, DriftPool? pool)
{
    /// <summary>
    /// Where nothing is known a level may be anywhere about the aim: new and adjusted ones within a manufacturing or fitting
    /// tolerance, others within the usual span of limits (common practice, no source). In mm, by <see cref="LegStart"/>.
    /// </summary>
    private static readonly double[] UsualDeviation = [0.02, 0.015, 0.05];

    public PathParameters Complete(PathParameters fitted)
    {
        var (mean, deviation) = (new double[DriftClasses.Levels], new double[DriftClasses.Levels]);
        for (var level = 0; level < DriftClasses.Levels; level++)
        {
            (mean[level], deviation[level]) = Level(fitted, level);
        }

        var (slopeMean, slopeDeviation) = (new double[DriftClasses.Slopes], new double[DriftClasses.Slopes]);
        for (var i = 0; i < slopes.Count; i++)
        {
            (slopeMean[slopes[i]], slopeDeviation[slopes[i]]) = (fitted.SlopeMean[i], fitted.SlopeDeviation[i]);
        }

        return fitted with
        {
            LevelMean = mean, LevelDeviation = deviation, SlopeMean = slopeMean, SlopeDeviation = slopeDeviation, Curvature = [],
        };
    }

    private (double Mean, double Deviation) Level(PathParameters fitted, int level)
    {
        var (side, start) = DriftClasses.OfLevel(level);
        var own = Find(level);
        if (own >= 0)
        {
            return (fitted.LevelMean[own], fitted.LevelDeviation[own]);
        }

        if (pool?.Together.Levels.FirstOrDefault(l => l.Side == side && l.Start == start) is { } borrowed)
        {
            return (borrowed.OffsetMm.Value, borrowed.DeviationMm.Value);
        }

        var other = Find(DriftClasses.Level(1 - side, start));
        return other >= 0
            ? (0, Math.Max(fitted.LevelDeviation[other], UsualDeviation[(int)start]))
            : (0, UsualDeviation[(int)start]);
    }

    private int Find(int level) => DriftClasses.IndexOf(levels, level);
}
