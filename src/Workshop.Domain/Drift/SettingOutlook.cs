using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Drift;

/// <summary>
/// What becomes of a lobe that is set to some clearance now: its slope is known as far as its history tells it, the clearance as
/// far as its measurement and the shims.
/// </summary>
public sealed class SettingOutlook
{
    private readonly ClearanceLimits limits;
    private readonly double[] slopes;

    /// <param name="limits">The lobe's.</param>
    /// <param name="slopes">Equally likely slopes in mm per 10,000 km that stand for its posterior.</param>
    internal SettingOutlook(ClearanceLimits limits, double[] slopes) => (this.limits, this.slopes) = (limits, slopes);

    /// <summary>The probability that it is outside its limits now or after some distance.</summary>
    /// <param name="clearanceMm">What it is set to.</param>
    /// <param name="uncertaintyMm">Standard uncertainty of that, above 0.</param>
    /// <param name="ahead">How far is looked.</param>
    public double LeavesWithin(double clearanceMm, double uncertaintyMm, Distance ahead)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(uncertaintyMm);
        var (lower, upper) = ((double)limits.Lower.Millimetres, (double)limits.Upper.Millimetres);
        var x = (double)(ahead.Metres / LobeHistory.MetresPerX);

        // A line that is inside at both ends is inside in between.
        return Math.Clamp(slopes.Average(slope =>
        {
            var least = lower - Math.Min(0, slope * x);
            var most = upper - Math.Max(0, slope * x);
            return most <= least ? 1 : NormalTails.UpperTail((clearanceMm - least) / uncertaintyMm) + NormalTails.UpperTail((most - clearanceMm) / uncertaintyMm);
        }), 0, 1);
    }
}
