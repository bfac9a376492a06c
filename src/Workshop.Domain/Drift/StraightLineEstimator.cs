using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Drift;

/// <summary>
/// How <see cref="StraightLineDrift"/> comes about. The limits of the distance are Fieller's, exact for several legs as for
/// one: the level of the last leg comes from its own readings, independent of the common slope (see
/// <see cref="ParallelLines.LineOf"/>). The scatter about the lines is never taken below that of the blades themselves,
/// step^2/12, the variance of rounding to a bracket: readings that happen to lie on a line prove no certainty.
/// </summary>
internal sealed class StraightLineEstimator
{
    private readonly LobeHistory history;
    private readonly ClearanceLimits limits;
    private readonly int lastLeg;
    private readonly List<(int Leg, LegReading Reading)> section;
    private readonly List<(int Leg, double X, double Y, double Step)> points;

    public StraightLineEstimator(LobeHistory history, ClearanceLimits limits)
    {
        this.history = history;
        this.limits = limits;
        lastLeg = history.Legs.Count - 1;
        section = [.. history.Legs
            .Select((leg, number) => (Leg: leg, Number: number))
            .Where(l => l.Leg.Section == history.Legs[lastLeg].Section)
            .SelectMany(l => l.Leg.Readings.Select(r => (l.Number, r)))];
        points = [.. section
            .Where(s => s.Reading.MiddleMm is not null)
            .Select(s => (s.Leg, s.Reading.X, (double)s.Reading.MiddleMm!.Value,
                (double)(s.Reading.UpperMm - s.Reading.LowerMm)!.Value))];
    }

    private double[] X => [.. points.Select(p => p.X)];

    private double[] Y => [.. points.Select(p => p.Y)];

    private int[] Legs => [.. points.Select(p => p.Leg)];

    public StraightLineDrift Estimate()
    {
        var nothing = new StraightLineDrift
        {
            Readings = points.Count,
            OpenEnded = section.Count - points.Count,
            LastReadingAt = lastLeg < 0 ? null : history.Legs[lastLeg].Readings[^1].At,
        };
        if (lastLeg < 0)
        {
            return No(nothing, NoForecastReason.NotMeasured, "It was not measured yet.");
        }

        if (history.CutSinceLastReading is { } cut)
        {
            return No(nothing, NoForecastReason.NotMeasuredSinceChange, $"{Because(cut)}, and it was not measured since.");
        }

        var estimate = ByLine(nothing);
        return Outside(estimate) is { } end ? Passed(estimate, end) : estimate;
    }

    private StraightLineDrift ByLine(StraightLineDrift nothing)
    {
        var level = points.Where(p => p.Leg == lastLeg).ToList();
        if (level.Count == 0)
        {
            return No(nothing, NoForecastReason.OpenEnded,
                "Since its level last changed every reading is open at one end: a line needs go and no-go.");
        }

        var slope = ParallelLines.CommonSlope(X, Y, Legs);
        if (!slope.HasValue)
        {
            var flat = nothing with { PresentMm = level.Average(p => p.Y) - (double)history.ShimPartNowMm };
            return points.Count == 1
                ? No(flat, NoForecastReason.OneReading, "One reading has no slope; a second at another distance will give one.")
                : No(flat, NoForecastReason.OneDistance,
                    $"The {points.Count} readings lie at one distance, or one on each level, so that there is no slope yet.");
        }

        return WithSlope(nothing, slope.Value, level);
    }

    private StraightLineDrift WithSlope(
        StraightLineDrift nothing, double slope, IReadOnlyList<(int Leg, double X, double Y, double Step)> level)
    {
        var leg = history.Legs[lastLeg];
        var lastX = leg.Readings[^1].X;
        var part = (double)history.ShimPartNowMm;
        var known = nothing with
        {
            DriftMm = slope,
            PresentMm = level.Average(p => p.Y) + (slope * (lastX - level.Average(p => p.X))) - part,
        };
        var fit = ParallelLines.Fit(X, Y, Legs, points.Average(p => p.Step * p.Step / 12));
        if (!fit.HasValue)
        {
            return No(known, NoForecastReason.NoUncertainty, Text(
                $"{points.Count} readings tell a slope ({slope:+0.0000;-0.0000} mm per 10,000 km) but not how far to trust it; the next reading will."));
        }

        var line = fit.Value.LineOf(lastLeg);
        var there = line.MeanResponseAt(lastX, StraightLineDrift.Confidence);
        var estimate = known with
        {
            Lines = fit.Value,
            Drift = fit.Value.Slope,
            Present = there with { Estimate = there.Estimate - part, Lower = there.Lower - part, Upper = there.Upper - part },
        };
        return Foretell(estimate, line, leg, lastX, part);
    }

    private StraightLineDrift Foretell(StraightLineDrift estimate, StraightLine line, Leg leg, double lastX, double part)
    {
        var end = estimate.DriftMm < 0 ? LimitEnd.Lower : LimitEnd.Upper;
        var towards = (end == LimitEnd.Lower ? limits.Lower : limits.Upper).Millimetres;
        var reached = line.InverseOfMeanResponse((double)towards + part, StraightLineDrift.Confidence);
        if (!reached.HasValue)
        {
            return No(estimate, NoForecastReason.SlopeNotDistinguishable, Text(
                $"The drift of {estimate.DriftMm:+0.0000;-0.0000;0} mm per 10,000 km (standard error {line.Slope.StandardError:0.0000}) cannot be told from none with {points.Count} readings."));
        }

        var reach = lastX + (double)(StraightLineDrift.Reach.Metres / LobeHistory.MetresPerX);
        if (reached.Value.Estimate > reach)
        {
            return No(estimate, NoForecastReason.NotWithinReach, Text(
                $"The line reaches the {(end == LimitEnd.Lower ? "lower" : "upper")} limit not within {StraightLineDrift.Reach.Kilometres:#,0} km of the last reading."));
        }

        return estimate with
        {
            Reaches = new LimitReached(
                end,
                towards,
                leg.DistanceAt(reached.Value.Estimate),
                leg.DistanceAt(reached.Value.Estimate > lastX ? Math.Max(lastX, reached.Value.Lower) : reached.Value.Lower),
                leg.DistanceAt(Math.Min(reached.Value.Upper, FurthestX)),
                Passed: false),
        };
    }

    /// <summary>A late end may lie absurdly far where the slope is only just distinguishable; distances stay storable.</summary>
    private const double FurthestX = 1000;

    /// <summary>
    /// Outside already: by the last reading's own bracket, while the shim that it was taken with is in; or by the whole
    /// interval of the line there. A line that only lies outside has decided nothing.
    /// </summary>
    private LimitEnd? Outside(StraightLineDrift estimate)
    {
        var last = history.Legs[lastLeg].Readings[^1];
        var verdict = last.ShimPartMm == history.ShimPartNowMm
            ? ClearanceVerdict.Of(last.Reading.Bracket, limits).Verdict
            : Verdict.NotDecided;
        return verdict == Verdict.TooTight || estimate.Present?.Upper < (double)limits.Lower.Millimetres ? LimitEnd.Lower
            : verdict == Verdict.TooWide || estimate.Present?.Lower > (double)limits.Upper.Millimetres ? LimitEnd.Upper
            : null;
    }

    private StraightLineDrift Passed(StraightLineDrift estimate, LimitEnd end)
    {
        var limit = end == LimitEnd.Lower ? limits.Lower : limits.Upper;
        var last = history.Legs[lastLeg].Readings[^1].At;
        return estimate with
        {
            Reaches = new LimitReached(end, limit.Millimetres, last, last, last, Passed: true), Reason = null, ReasonSentence = null,
        };
    }

    private static string Because(LegCut cut) => cut switch
    {
        LegCut.ScrewTurned => "The screw was turned",
        LegCut.ShimUnmeasured => "A shim was changed that nobody measured",
        LegCut.ChangeUnknown => "It may have been changed",
        _ => "A part that it depends on was replaced or ground",
    };

    private static StraightLineDrift No(StraightLineDrift estimate, NoForecastReason reason, string sentence) =>
        estimate with { Reason = reason, ReasonSentence = sentence };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
