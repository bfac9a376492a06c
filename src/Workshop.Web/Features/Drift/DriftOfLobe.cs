using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Web.Features.Drift;

/// <summary>What is answered about one lobe; distances are what the engine had done.</summary>
/// <param name="Spoken">As a person says it: "cylinder 1, intake 2".</param>
/// <param name="ShimPartNowMm">Clearance now = y* - this.</param>
public sealed record DriftOfLobe(
    ValveKey Valve,
    int Lobe,
    string Spoken,
    Clearance LowerLimitMm,
    Clearance UpperLimitMm,
    Clearance SetToMm,
    LeverRatio LeverRatio,
    ShimThickness? ShimNowMm,
    decimal ShimPartNowMm,
    IReadOnlyList<DriftOfLobe.LegLine> Legs,
    IReadOnlyList<DriftOfLobe.Change> Changes,
    IReadOnlyList<DriftOfLobe.LeftOutReading> LeftOut,
    DriftOfLobe.Line Estimate)
{
    /// <summary>How many points a line is answered with: enough for the curve of its band.</summary>
    private const int LinePoints = 13;

    private static readonly Distance LeastAhead = Distance.FromKilometres(10_000);
    private static readonly Distance MostAhead = Distance.FromKilometres(60_000);

    /// <param name="Start">Whether the level was new, set at a visit, or first seen.</param>
    /// <param name="Cut">What ended the leg before.</param>
    /// <param name="OriginKm">Where x counts from.</param>
    /// <param name="ShimSteps">From where on the shims' part of y* is so much.</param>
    /// <param name="Points">The line through it in y*, where it belongs to the present slope; of the last leg with its band.</param>
    public sealed record LegLine(
        int Number, int Section, LegStart Start, LegCut? Cut, Distance OriginKm, ShimThickness? FirstShimMm,
        IReadOnlyList<Reading> Readings, IReadOnlyList<Step> ShimSteps, IReadOnlyList<Point> Points);

    /// <param name="YLowerMm">y* is at least this: go with the shims' part added.</param>
    /// <param name="YUpperMm">y* is below this: no-go with the shims' part added.</param>
    public sealed record Reading(
        Guid Id, int? JobCardNumber, Stage Stage, LocalDate MeasuredOn, Distance EngineKm, BracketKind Kind, Clearance? GoMm,
        Clearance? NoGoMm, ShimThickness? ShimMm, decimal ShimPartMm, decimal? YLowerMm, decimal? YUpperMm);

    public sealed record Step(Distance EngineKm, decimal PartMm);

    public sealed record Point(Distance EngineKm, decimal Mm, decimal? LowerMm, decimal? UpperMm);

    /// <param name="Cut">What it cut; absent for a swap of known shims.</param>
    public sealed record Change(
        Distance EngineKm, LocalDate On, LegCut? Cut, ShimThickness? CameOutMm, ShimThickness? WentInMm);

    public sealed record LeftOutReading(
        Distance EngineKm, LocalDate MeasuredOn, Stage Stage, Clearance? GoMm, Clearance? NoGoMm, string Why);

    /// <param name="OpenEnded">Readings of the present slope left out because an end is open.</param>
    /// <param name="PresentMm">Clearance at the last reading, with the shim that is in now.</param>
    /// <param name="DriftMmPer10000Km">With the shims' part taken out.</param>
    /// <param name="Confidence">Of every interval here.</param>
    /// <param name="Reaches">Where the line reaches a limit; absent where nothing is foretold, and then there is a reason.</param>
    public sealed record Line(
        int Readings, int OpenEnded, decimal? PresentMm, decimal? PresentLowerMm, decimal? PresentUpperMm,
        decimal? DriftMmPer10000Km, decimal? DriftStandardError, decimal? DriftLower, decimal? DriftUpper,
        double? DegreesOfFreedom, double Confidence, Limit? Reaches, NoForecastReason? Reason, string? ReasonSentence);

    /// <param name="EngineKm">What the engine will have done.</param>
    /// <param name="FurtherKm">From the last reading.</param>
    /// <param name="On">The day of it by the odometer's own rate; absent where the rate does not get there in twenty years.</param>
    /// <param name="RateBasis">What the rate comes from.</param>
    /// <param name="Passed">It was outside at the last reading.</param>
    public sealed record Limit(
        LimitEnd End, decimal LimitMm, Distance EngineKm, Distance EarliestEngineKm, Distance LatestEngineKm,
        Distance FurtherKm, LocalDate? On, RateBasis? RateBasis, bool Passed);

    internal static DriftOfLobe Of(EngineDrift engine, LobeDrift lobe, WorkshopTime time)
    {
        var (limits, history, estimate) = lobe;
        return new DriftOfLobe(
            history.Lobe.Valve,
            history.Lobe.Lobe,
            history.Lobe.Spoken,
            limits.Lower,
            limits.Upper,
            limits.SetTo,
            limits.LeverRatio,
            history.ShimNow,
            history.ShimPartNowMm,
            [.. history.Legs.Select((leg, number) => LegOf(lobe, leg, number, time))],
            [.. history.Changes.Select(c => new Change(c.At, time.DayOf(c.When), c.Cut, c.CameOut, c.WentIn))],
            [.. history.LeftOut.Select(o => new LeftOutReading(
                o.At, time.DayOf(o.Reading.MeasuredAt), o.Reading.Stage, o.Reading.Go, o.Reading.NoGo, o.Why))],
            LineOf(estimate, engine));
    }

    private static LegLine LegOf(LobeDrift lobe, Leg leg, int number, WorkshopTime time) => new(
        number + 1,
        leg.Section,
        leg.Start,
        leg.Cut,
        leg.Origin,
        leg.FirstShim,
        [.. leg.Readings.Select(r => new Reading(
            r.Reading.Id, r.Reading.JobCardNumber, r.Reading.Stage, time.DayOf(r.Reading.MeasuredAt), r.At, r.Reading.Kind,
            r.Reading.Go, r.Reading.NoGo, r.Shim, r.ShimPartMm, r.LowerMm, r.UpperMm))],
        [.. ShimSteps.Of(lobe.History, number).Select(s => new Step(s.From, s.PartMm))],
        [.. PointsOf(lobe, leg, number)]);

    /// <summary>The last leg's line runs on beyond its last reading, as far as it is of interest; the others end with theirs.</summary>
    private static IEnumerable<Point> PointsOf(LobeDrift lobe, Leg leg, int number)
    {
        var last = number == lobe.History.Legs.Count - 1;
        if (lobe.Estimate.Lines?.Find(number) is not { } line)
        {
            return [];
        }

        var from = leg.Readings[0].At;
        var to = leg.Readings[^1].At;
        if (!last)
        {
            return [At(from), At(to)];
        }

        var ahead = lobe.Estimate.Reaches is { Passed: false } reaches
            ? Distance.FromMetres(decimal.Clamp(1.1m * (reaches.At - to).Metres, LeastAhead.Metres, MostAhead.Metres))
            : LeastAhead;
        var step = (to + ahead - from).Metres / (LinePoints - 1);
        return Enumerable.Range(0, LinePoints).Select(i => At(from + Distance.FromMetres(decimal.Round(i * step)), band: true));

        Point At(Distance distance, bool band = false)
        {
            var height = line.MeanResponseAt(leg.XAt(distance), StraightLineDrift.Confidence);
            return new Point(
                distance,
                DriftFigures.Mm(height.Estimate)!.Value,
                band ? DriftFigures.Mm(height.Lower) : null,
                band ? DriftFigures.Mm(height.Upper) : null);
        }
    }

    private static Line LineOf(StraightLineDrift estimate, EngineDrift engine)
    {
        var drift = estimate.Drift?.Interval(StraightLineDrift.Confidence);
        return new Line(
            estimate.Readings,
            estimate.OpenEnded,
            DriftFigures.Mm(estimate.PresentMm),
            DriftFigures.Mm(estimate.Present?.Lower),
            DriftFigures.Mm(estimate.Present?.Upper),
            DriftFigures.Drift(estimate.DriftMm),
            DriftFigures.Drift(drift?.StandardError),
            DriftFigures.Drift(drift?.Lower),
            DriftFigures.Drift(drift?.Upper),
            drift?.DegreesOfFreedom,
            StraightLineDrift.Confidence,
            estimate.Reaches is { } reaches
                ? new Limit(
                    reaches.End, reaches.LimitMm, reaches.At, reaches.Earliest, reaches.Latest,
                    reaches.At - estimate.LastReadingAt!.Value, engine.DayOf(reaches.At), engine.RateBasis, reaches.Passed)
                : null,
            estimate.Reason,
            estimate.ReasonSentence);
    }
}
