using Workshop.Domain.EngineModels;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Drift;

/// <summary>A reading of a lobe that is held against its history.</summary>
/// <param name="Lobe">Which.</param>
/// <param name="Legs">The lobe's legs before it; the last may have no readings.</param>
/// <param name="X">Where it was taken, along the last leg.</param>
/// <param name="LowerMm">Its lower end as y of the last leg, minus infinity where it is open.</param>
/// <param name="UpperMm">Its upper end, infinity where it is open.</param>
/// <param name="Variance">What is known of its error beside sigma^2, in mm^2.</param>
internal sealed record HeldReading(
    LobeKey Lobe, IReadOnlyList<ModelLeg> Legs, double X, double LowerMm, double UpperMm, double Variance);

/// <summary>What the history made of a reading.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="P">Two-sided predictive probability; small where it contradicts its history.</param>
/// <param name="Score">Standard deviations above what was expected.</param>
/// <param name="Posterior">What was known of the lobe before.</param>
/// <param name="DeviationMm">Standard deviation of such a reading, in mm.</param>
/// <param name="AheadX">How far beyond the last reading of its leg it lies, in 10,000 km.</param>
internal sealed record PredictedReading(
    HeldReading Reading, double P, double Score, GroupPosterior Posterior, double DeviationMm, double AheadX);

/// <summary>Predicts the readings of one visit to one engine from what was read before.</summary>
internal static class ReadingPrediction
{
    /// <summary>One prediction for each reading, in their order; none where there is nothing to predict from.</summary>
    public static IReadOnlyList<PredictedReading> Of(DriftFit fit, IReadOnlyList<HeldReading> readings)
    {
        if (readings.Count == 0)
        {
            return [];
        }

        var data = new PathDataBuilder();
        data.Cluster();
        var groups = new List<int>();
        foreach (var reading in readings)
        {
            var side = reading.Lobe.Valve.Side;
            foreach (var section in reading.Legs.GroupBy(l => l.Section))
            {
                var group = data.Group(DriftClasses.Slope(side));
                foreach (var leg in section)
                {
                    data.Leg(DriftClasses.Level(side, leg.Start), leg.AimMm);
                    foreach (var read in leg.Readings)
                    {
                        data.Reading(read.X, read.LowerMm, read.UpperMm, read.Variance);
                    }
                }

                if (section.Key == reading.Legs[^1].Section)
                {
                    groups.Add(group);
                }
            }
        }

        var posterior = IntervalPaths.PosteriorOfCluster(data.Build(), fit.Plausible, 0);
        return [.. readings.Select((reading, i) => Predict(fit, reading, posterior.Groups[groups[i]]))];
    }

    /// <summary>
    /// The mean of the readings' scores in its own standard deviations. Readings share what an engine's slopes have in common:
    /// beyond their own histories that moves two readings together by no more than its variance times how far both lie ahead.
    /// </summary>
    public static double? ScoreTogether(DriftFit fit, IReadOnlyList<PredictedReading> readings) =>
        readings.Count == 0 ? null : readings.Average(r => r.Score) / Math.Sqrt(VarianceOfMean(fit, readings, r => r.DeviationMm));

    /// <summary>Variance of the mean of residuals, each divided by a unit.</summary>
    public static double VarianceOfMean(
        DriftFit fit, IReadOnlyList<PredictedReading> readings, Func<PredictedReading, double> unit)
    {
        var common = fit.BetweenEnginesMm.Value * fit.BetweenEnginesMm.Value;
        var sum = 0.0;
        foreach (var one in readings)
        {
            foreach (var other in readings)
            {
                var covariance = ReferenceEquals(one, other)
                    ? one.DeviationMm * one.DeviationMm
                    : Math.Min(common, one.Posterior.SlopeDeviation * other.Posterior.SlopeDeviation) * one.AheadX * other.AheadX;
                sum += covariance / (unit(one) * unit(other));
            }
        }

        return sum / readings.Count / readings.Count;
    }

    private static PredictedReading Predict(DriftFit fit, HeldReading reading, GroupPosterior posterior)
    {
        var level = posterior.DeviationAt(reading.X);
        var width = reading.UpperMm - reading.LowerMm;
        var last = reading.Legs[^1].Readings;
        return new PredictedReading(
            reading,
            posterior.PredictiveP(reading.X, reading.LowerMm, reading.UpperMm, reading.Variance),
            posterior.PredictiveScore(reading.X, reading.LowerMm, reading.UpperMm, reading.Variance),
            posterior,
            Math.Sqrt((level * level) + (fit.SigmaMm.Value * fit.SigmaMm.Value) + reading.Variance
                + (double.IsFinite(width) ? width * width / 12 : 0)),
            reading.X - (last.Count == 0 ? 0 : last[^1].X));
    }
}
