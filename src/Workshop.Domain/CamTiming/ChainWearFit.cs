using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.CamTiming;

/// <summary>How the chains of one drive of an engine model wear, as fitted to all that were read.</summary>
/// <param name="Plausible">Parameters with weights; both classes of levels are there.</param>
/// <param name="Chains">How many tell a slope.</param>
/// <param name="Readings">How many readings entered.</param>
public sealed record ChainWearFit(IReadOnlyList<PlausibleParameters> Plausible, int Chains, int Readings)
{
    /// <summary>Class of levels that begin with a new chain.</summary>
    internal const int New = 0;

    /// <summary>Class of levels that begin with a new tensioner or guide.</summary>
    internal const int Refitted = 1;

    /// <summary>Mean growth in 10,000 km, in mm or crank degrees.</summary>
    public double Slope => Plausible.Sum(p => p.Weight * p.Parameters.SlopeMean[0]);

    /// <summary>Standard deviation of that growth from chain to chain.</summary>
    public double SlopeDeviation => Plausible.Sum(p => p.Weight * p.Parameters.SlopeDeviation[0]);

    internal static ChainWearFit Of(PathFit fit, int chains, int readings) => new(
        [.. fit.Plausible.Select(p => p with { Parameters = Completed(p.Parameters) })], chains, readings);

    /// <summary>A kind of level that no chain has shown yet is taken to be as wide as three times the other.</summary>
    private static PathParameters Completed(PathParameters fitted) => fitted.LevelMean.Count > Refitted ? fitted : fitted with
    {
        LevelMean = [fitted.LevelMean[0], fitted.LevelMean[0]],
        LevelDeviation = [fitted.LevelDeviation[0], Math.Max(3 * fitted.LevelDeviation[0], fitted.Sigma)],
        Curvature = [],
    };
}

/// <summary>How well one reading of wear tells it, before any was compared with another.</summary>
internal static class ReadingError
{
    /// <summary>
    /// A tensioner is read to about 0.2 mm and a retard, the mean of two lobe centres, to about half a crank degree (common practice, no
    /// source); a factor of two either way is ordinary.
    /// </summary>
    public static double Usual(WearMeasure measure) => measure == WearMeasure.TensionerExtension ? 0.2 : 0.5;

    public const double LogDeviation = 0.7;

    public static PathPrior Prior(WearMeasure measure) => new(PriorOn.LogSigma, 0, Math.Log(Usual(measure)), LogDeviation);
}

/// <summary>
/// Parameters for one chain that stands alone: level and slope may be anywhere within what the limit allows, and the error of
/// a reading is what its own scatter and the usual one leave possible.
/// </summary>
internal static class OwnReadings
{
    /// <summary>Standard deviations of the logarithm at which the error of a reading is tried: from a fifth to five times the usual.</summary>
    private static readonly double[] Places = [.. Enumerable.Range(-8, 17).Select(i => 0.3 * i)];

    /// <summary>What counts for less is left out.</summary>
    private const double LeastWeight = 1e-4;

    public static IReadOnlyList<PlausibleParameters> Plausible(PathData data, ChainLife life, double limit, WearMeasure measure)
    {
        // Ten times the limit on a level and on a slope of 10,000 km is flat beside any reading.
        var wide = 10 * limit;
        var level = life.Readings.First().Middle;
        var tried = Places.Select(place =>
        {
            var parameters = new PathParameters
            {
                LevelMean = [level, level], LevelDeviation = [wide, wide], SlopeMean = [0], SlopeDeviation = [wide],
                Sigma = ReadingError.Usual(measure) * Math.Exp(ReadingError.LogDeviation * place),
            };
            return (Parameters: parameters, Log: IntervalPaths.LogLikelihood(data, parameters) - (place * place / 2));
        }).ToArray();
        var top = tried.Max(t => t.Log);
        var kept = tried.Select(t => (t.Parameters, Weight: Math.Exp(t.Log - top))).Where(t => t.Weight > LeastWeight).ToArray();
        var total = kept.Sum(t => t.Weight);
        return kept.Select(t => new PlausibleParameters(t.Weight / total, t.Parameters)).ToArray();
    }
}
