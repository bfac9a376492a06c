using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Drift;

/// <summary>A reading as found, as it is typed.</summary>
/// <param name="Lobe">Which lobe.</param>
/// <param name="Bracket">What the blades said.</param>
/// <param name="Earlier">What they said in earlier attempts at this visit; the same again is accepted at once.</param>
public sealed record TypedReading(LobeKey Lobe, Bracket Bracket, IReadOnlyList<Bracket> Earlier);

/// <summary>What the history makes of one reading.</summary>
/// <param name="Lobe">Which lobe.</param>
/// <param name="P">Two-sided predictive probability.</param>
/// <param name="ExpectedFromMm">Lower end of the 90 % span in which the clearance was expected.</param>
/// <param name="ExpectedToMm">Upper end of it.</param>
/// <param name="Visits">Visits at which the lobe was read before; none: the engine model alone tells.</param>
/// <param name="MeasureAgain">It disagrees with its history and was not repeated: measure once more.</param>
/// <param name="Sentence">Where it is to be measured again, why.</param>
public sealed record ReadingCheck(
    LobeKey Lobe, double P, double ExpectedFromMm, double ExpectedToMm, int Visits, bool MeasureAgain, string? Sentence);

/// <summary>
/// Readings as found held against what was to be expected, while the cover is open. It asks, it never blocks: no more than one
/// visit in a hundred is asked about without cause, and fewer where blades are coarse.
/// </summary>
/// <param name="Readings">Those of which something was expected.</param>
/// <param name="Sentences">What is to be said about a cylinder or the engine as a whole.</param>
public sealed record VisitCheck(IReadOnlyList<ReadingCheck> Readings, IReadOnlyList<string> Sentences)
{
    /// <summary>The share of sound visits in which some reading, or the engine as a whole, is asked about at the most.</summary>
    public const double FalseAlarms = 0.01;

    private const int FewestForEngine = 4;

    /// <summary>A mean of readings this many of its standard deviations off is shifted.</summary>
    private static readonly double Shifted = Statistics.NormalTails.Deviate(1 - (FalseAlarms / 2));

    /// <summary>A lobe this many standard deviations tighter than expected counts as tight.</summary>
    private const double Tight = -2;

    /// <summary>Holds the readings of a visit against the engine's history before it.</summary>
    /// <param name="before">The engine without this visit.</param>
    /// <param name="fit">What is known of its engine model.</param>
    /// <param name="at">What the engine has done at the visit.</param>
    /// <param name="readings">Readings as found that were typed so far.</param>
    /// <param name="expected">How many readings as found the visit will have; at least those given.</param>
    public static VisitCheck Of(
        DriftEngine before, DriftFit fit, Distance at, IReadOnlyList<TypedReading> readings, int expected)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(readings);
        var typed = readings.ToDictionary(r => r.Lobe);
        var predicted = ReadingPrediction.Of(fit, [.. before.Lobes
            .Where(l => typed.ContainsKey(l.Lobe) && fit.Knows(l.Lobe.Valve.Side))
            .Select(l => Held(before, fit, l, typed[l.Lobe].Bracket, at))
            .OfType<HeldReading>()]);
        var level = 1 - Math.Pow(1 - FalseAlarms, 1.0 / Math.Max(expected, readings.Count));
        var tight = TightCylinders(before, predicted, typed);
        var rest = predicted.Where(p => !tight.Contains(p.Reading.Lobe.Valve.Cylinder)).ToList();
        var restIsTight = ReadingPrediction.ScoreTogether(fit, rest) <= -Shifted;
        return new VisitCheck(
            [.. predicted.Select(p => CheckOf(before, p, typed[p.Reading.Lobe], level))],
            [.. tight.Count == 0 || restIsTight ? Engine(fit, predicted) : tight.Select(OfCylinder)]);
    }

    private static HeldReading? Held(DriftEngine before, DriftFit fit, LobeHistory lobe, Bracket bracket, Distance at)
    {
        var uncertainty = SwapUncertainty.Of(before.Specification.ValveTrain, fit.SigmaMm.Value);
        var legs = before.LegsOf(lobe, uncertainty);
        if (legs.Count == 0 || lobe.CutSinceLastReading == LegCut.ChangeUnknown)
        {
            return null;
        }

        var leg = legs[^1];
        var part = lobe.ShimPartNowMm - leg.PartMm;
        return new HeldReading(
            lobe.Lobe,
            legs,
            leg.XAt(at),
            bracket.Go is { } go ? (double)(go.Millimetres + part) : double.NegativeInfinity,
            bracket.NoGo is { } noGo ? (double)(noGo.Millimetres + part) : double.PositiveInfinity,
            ModelLegs.VarianceOf(bracket.Stacked) + ModelLegs.VarianceOf(part, before.LimitsOf(lobe.Lobe).LeverRatio, uncertainty));
    }

    private static ReadingCheck CheckOf(DriftEngine before, PredictedReading predicted, TypedReading typed, double level)
    {
        var history = before.Lobes.Single(l => l.Lobe == typed.Lobe);
        var part = (double)(history.ShimPartNowMm - predicted.Reading.Legs[^1].PartMm);
        var from = Math.Max(0, predicted.Posterior.ValueQuantile(predicted.Reading.X, 0.05) - part);
        var to = Math.Max(0, predicted.Posterior.ValueQuantile(predicted.Reading.X, 0.95) - part);
        var visits = history.Legs.SelectMany(l => l.Readings).Select(r => r.Reading.OdometerReadingId).Distinct().Count();
        var again = predicted.P < level && !typed.Earlier.Contains(typed.Bracket);
        var with = visits switch
        {
            0 => "what this engine model shows",
            1 => "the last visit",
            _ => $"the last {visits} visits",
        };
        return new ReadingCheck(typed.Lobe, predicted.P, from, to, visits, again, again ? Text(
            $"{typed.Lobe.Spoken}: {typed.Bracket} disagrees with {with}, which let expect {from:0.00} to {to:0.00} mm. Measure once more; the same again is accepted.") : null);
    }

    /// <summary>
    /// Cylinders whose valves, two or more, are all tighter than expected or take no blade, while another cylinder's are not.
    /// </summary>
    private static List<int> TightCylinders(
        DriftEngine before, IReadOnlyList<PredictedReading> predicted, Dictionary<LobeKey, TypedReading> typed)
    {
        var cylinders = typed.Keys.Select(l => l.Valve.Cylinder).Distinct().Order().ToList();
        var tight = cylinders.Where(cylinder =>
        {
            var lobes = before.Lobes.Select(l => l.Lobe).Where(l => l.Valve.Cylinder == cylinder).ToList();
            return lobes.Count > 1 && lobes.All(lobe => typed.TryGetValue(lobe, out var reading)
                && (predicted.FirstOrDefault(p => p.Reading.Lobe == lobe) is { } known
                    ? known.Score < Tight
                    : reading.Bracket.Kind == BracketKind.NoneEnters));
        }).ToList();
        return tight.Count == 0 || (tight.Count == cylinders.Count && cylinders.Count > 1)
            ? []
            : tight;
    }

    private static string OfCylinder(int cylinder) =>
        $"All valves of cylinder {cylinder} are tighter than expected or take no blade: is it on its compression stroke, are its lobes away?";

    private static IEnumerable<string> Engine(DriftFit fit, IReadOnlyList<PredictedReading> predicted)
    {
        if (predicted.Count < FewestForEngine || ReadingPrediction.ScoreTogether(fit, predicted) is not { } score
            || Math.Abs(score) < Shifted)
        {
            return [];
        }

        var mean = predicted.Average(p => p.Score * p.DeviationMm);
        return [Text(
            $"All {predicted.Count} valves together read {Math.Abs(mean):0.00} mm {(mean < 0 ? "tighter" : "wider")} than expected: check engine temperature, blade set and hand.")];
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
