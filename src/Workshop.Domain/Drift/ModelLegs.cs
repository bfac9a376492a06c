using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Drift;

/// <summary>How well a known change of shim is known.</summary>
/// <param name="MicrometerMm">Standard uncertainty of one measured thickness.</param>
/// <param name="Ratio">Standard uncertainty of the lever ratio; a bucket has none.</param>
/// <param name="SigmaMm">Standard deviation of one reading, which decides whether the uncertainty of a change matters.</param>
public sealed record SwapUncertainty(double MicrometerMm, double Ratio, double SigmaMm)
{
    /// <summary>
    /// What counts here is the difference of two thicknesses by one micrometer, from which its zero and the error of its scale fall
    /// out; readings that repeat within 0.002 mm have a standard uncertainty of 0.002 / root 3 (rectangular distribution, JCGM
    /// 100:2008, 4.3.7), a lever ratio stated to two digits one of 0.01 / root 3. A hand reads blades to about 0.006 mm (common
    /// practice, no source).
    /// </summary>
    public static SwapUncertainty Of(ValveTrainKind kind, double? sigmaMm = null) =>
        new(0.0012, kind == ValveTrainKind.ShimUnderFingerFollower ? 0.006 : 0, sigmaMm ?? 0.006);

    /// <summary>Variance in mm^2 that a change of shim adds: 2 ratio^2 u_mic^2 + change^2 u_ratio^2.</summary>
    public double VarianceOf(double ratio, double changeMm) =>
        (2 * ratio * ratio * MicrometerMm * MicrometerMm) + (changeMm * changeMm * Ratio * Ratio);

    /// <summary>Beyond a quarter of a reading's own variance the two stretches are better told apart.</summary>
    public bool IsTooMuch(double variance) => variance > SigmaMm * SigmaMm / 4;
}

/// <summary>A leg as the model takes it: levels that a known shim joins well enough are one.</summary>
/// <param name="Section">Legs of one section share a slope.</param>
/// <param name="Start">What kind of level it has.</param>
/// <param name="Origin">What the engine had done where x counts from.</param>
/// <param name="AimMm">The clearance aimed at.</param>
/// <param name="PartMm">The shims' part of y* that is counted as none: y = clearance + part - this.</param>
/// <param name="Readings">In order; none where it was set and not measured since.</param>
internal sealed record ModelLeg(
    int Section, LegStart Start, Distance Origin, double AimMm, decimal PartMm, IReadOnlyList<ModelReading> Readings)
{
    /// <summary>Distance in 10,000 km along the leg.</summary>
    public double XAt(Distance engineDistance) => (double)((engineDistance - Origin).Metres / LobeHistory.MetresPerX);

    /// <summary>The way back, to the metre.</summary>
    public Distance DistanceAt(double x) =>
        Origin + Distance.FromMetres(decimal.Round((decimal)x * LobeHistory.MetresPerX));
}

/// <summary>A reading as the model takes it.</summary>
/// <param name="X">Along the leg, in 10,000 km.</param>
/// <param name="LowerMm">Lower end of y, minus infinity where no blade entered.</param>
/// <param name="UpperMm">Upper end of y, infinity where no thicker blade stopped.</param>
/// <param name="Variance">What is known of its error beside sigma^2, in mm^2.</param>
/// <param name="ShimEffectMm">Stated lever ratio x shim added since the leg's start: what the ratio's share multiplies.</param>
internal sealed record ModelReading(double X, double LowerMm, double UpperMm, double Variance, double ShimEffectMm);

/// <summary>Takes the legs of a lobe for the model.</summary>
internal static class ModelLegs
{
    /// <summary>
    /// Two blades together let more air and burr in between than one: a standard uncertainty of 0.005 mm is added (common
    /// practice, no source).
    /// </summary>
    private const double StackedVariance = 0.005 * 0.005;

    /// <summary>
    /// The legs in order. The last one is where the valve stands now; it has no readings where the valve was set since. Nothing
    /// is left to stand on, and the list ends with the leg before, where <see cref="LobeHistory.CutSinceLastReading"/> says that
    /// nobody knows what was done.
    /// </summary>
    /// <param name="history">The lobe.</param>
    /// <param name="ratio">Its lever ratio.</param>
    /// <param name="uncertainty">Of known changes of shim.</param>
    /// <param name="aimMm">The clearance that a leg begun on a card was set to.</param>
    public static IReadOnlyList<ModelLeg> Of(
        LobeHistory history, LeverRatio ratio, SwapUncertainty uncertainty, Func<int?, double> aimMm)
    {
        var legs = new List<ModelLeg>();
        foreach (var leg in history.Legs)
        {
            var start = new ModelLeg(leg.Section, leg.Start, leg.Origin, aimMm(leg.SetOnCard), 0, []);
            var readings = new List<ModelReading>();
            foreach (var reading in leg.Readings)
            {
                var variance = VarianceOf(reading.ShimPartMm - start.PartMm, ratio, uncertainty);
                if (uncertainty.IsTooMuch(variance))
                {
                    Add(legs, start, readings);
                    start = start with
                    {
                        Start = LegStart.Adjusted, Origin = SwapBefore(history, leg, reading), PartMm = reading.ShimPartMm, AimMm = aimMm(null),
                    };
                    readings = [];
                    variance = 0;
                }

                readings.Add(ReadingOf(reading, start, variance));
            }

            Add(legs, start, readings);
        }

        return AfterLastReading(history, legs, aimMm);
    }

    private static List<ModelLeg> AfterLastReading(LobeHistory history, List<ModelLeg> legs, Func<int?, double> aimMm)
    {
        if (history.CutSinceLastReading is { } cut && cut != LegCut.ChangeUnknown && history.StandsOn is { } level)
        {
            var section = (legs.Count == 0 ? 1 : legs[^1].Section) + (cut == LegCut.PartChanged ? 1 : 0);
            legs.Add(new ModelLeg(section, level.Start, level.At, aimMm(level.Card), 0, []));
        }

        return legs;
    }

    private static void Add(List<ModelLeg> legs, ModelLeg start, List<ModelReading> readings)
    {
        if (readings.Count > 0)
        {
            legs.Add(start with { Readings = readings });
        }
    }

    /// <summary>What a reading with stacked blades adds to its variance, in mm^2.</summary>
    public static double VarianceOf(bool stacked) => stacked ? StackedVariance : 0;

    /// <summary>What a known change of shim adds to a reading's variance, in mm^2.</summary>
    public static double VarianceOf(decimal partMm, LeverRatio ratio, SwapUncertainty uncertainty) => partMm == 0
        ? 0
        : uncertainty.VarianceOf((double)ratio.Value, (double)(partMm / ratio.Value));

    private static Distance SwapBefore(LobeHistory history, Leg leg, LegReading reading) =>
        history.Changes.LastOrDefault(c => c.Cut is null && c.At <= reading.At && c.At >= leg.Origin)?.At ?? reading.At;

    private static ModelReading ReadingOf(LegReading reading, ModelLeg leg, double variance)
    {
        var part = reading.ShimPartMm - leg.PartMm;
        return new ModelReading(
            leg.XAt(reading.At),
            reading.Reading.Go is { } go ? (double)(go.Millimetres + part) : double.NegativeInfinity,
            reading.Reading.NoGo is { } noGo ? (double)(noGo.Millimetres + part) : double.PositiveInfinity,
            variance + VarianceOf(reading.Reading.Stacked),
            (double)part);
    }
}
