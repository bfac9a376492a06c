using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Web.Features.Drift;

/// <summary>What is answered about one lobe; distances are what the engine had done.</summary>
/// <param name="Spoken">As a person says it: "cylinder 1, intake 2".</param>
/// <param name="ShimPartNowMm">Clearance now = y* - this.</param>
/// <param name="Forecast">What is known and foretold; absent where nothing is.</param>
/// <param name="NoForecast">Why nothing is foretold; absent where something is.</param>
/// <param name="WhyNot">The same in a sentence.</param>
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
    IReadOnlyList<DriftOfLobe.LegReadings> Legs,
    IReadOnlyList<DriftOfLobe.Change> Changes,
    IReadOnlyList<DriftOfLobe.LeftOutReading> LeftOut,
    DriftOfLobe.Outlook? Forecast,
    NoForecastReason? NoForecast,
    string? WhyNot)
{
    /// <summary>Uprights of a fan ahead of its beginning: enough for the curve of its edges.</summary>
    private const int FanAhead = 8;

    private static readonly Distance LeastAhead = Distance.FromKilometres(15_000);
    private static readonly Distance MostAhead = Distance.FromKilometres(80_000);

    /// <param name="Start">Whether the level was new, set at a visit, or first seen.</param>
    /// <param name="Cut">What ended the leg before.</param>
    /// <param name="OriginKm">Where x counts from.</param>
    /// <param name="ShimSteps">From where on the shims' part of y* is so much.</param>
    public sealed record LegReadings(
        int Number, int Section, LegStart Start, LegCut? Cut, Distance OriginKm, ShimThickness? FirstShimMm,
        IReadOnlyList<Reading> Readings, IReadOnlyList<Step> ShimSteps);

    /// <param name="YLowerMm">y* is at least this: go with the shims' part added.</param>
    /// <param name="YUpperMm">y* is below this: no-go with the shims' part added.</param>
    public sealed record Reading(
        Guid Id, int? JobCardNumber, Stage Stage, LocalDate MeasuredOn, Distance EngineKm, BracketKind Kind, Clearance? GoMm,
        Clearance? NoGoMm, ShimThickness? ShimMm, decimal ShimPartMm, decimal? YLowerMm, decimal? YUpperMm);

    public sealed record Step(Distance EngineKm, decimal PartMm);

    /// <param name="Cut">What it cut; absent for a swap of known shims.</param>
    public sealed record Change(
        Distance EngineKm, LocalDate On, LegCut? Cut, ShimThickness? CameOutMm, ShimThickness? WentInMm);

    public sealed record LeftOutReading(
        Distance EngineKm, LocalDate MeasuredOn, Stage Stage, int? JobCardNumber, Clearance? GoMm, Clearance? NoGoMm, string Why);

    /// <summary>Clearances are true ones with the shim that is in now; spans are those of 90 %.</summary>
    /// <param name="Readings">Of the present slope; 0 where the engine model alone tells.</param>
    /// <param name="FromKm">Where the forecast begins: at the last reading, or where the valve was set.</param>
    /// <param name="DriftMmPer10000Km">With the shims' part taken out.</param>
    /// <param name="OutsideNow">Probability of being outside its limits where the forecast begins.</param>
    /// <param name="OutsideAtNextCheck">The same at the next check.</param>
    /// <param name="Leaves">The distances at which it has left its limits with a probability of 10, 50 and 90 %.</param>
    /// <param name="Fan">Quantiles of the clearance along the present leg and beyond.</param>
    public sealed record Outlook(
        int Readings, Distance FromKm, decimal PresentMm, decimal PresentLowerMm, decimal PresentUpperMm,
        decimal DriftMmPer10000Km, decimal DriftDeviation, decimal DriftLower, decimal DriftUpper,
        double OutsideNow, double? OutsideAtNextCheck, IReadOnlyList<Leaving> Leaves, IReadOnlyList<FanUpright> Fan);

    /// <param name="EngineKm">What the engine will have done; absent where not within 200,000 km of the last reading.</param>
    /// <param name="On">The day of it by the odometer's own rate; absent where the rate does not get there in twenty years.</param>
    public sealed record Leaving(double Probability, Distance? EngineKm, LocalDate? On);

    /// <param name="Mm">The 5, 25, 50, 75 and 95 % quantiles.</param>
    public sealed record FanUpright(Distance EngineKm, IReadOnlyList<decimal> Mm);

    internal static DriftOfLobe Of(
        EngineDrift engine, LobeHistory history, EngineForecast? forecast, DriftFitVersion? version, NextCheck? next, WorkshopTime time)
    {
        var limits = engine.Engine.LimitsOf(history.Lobe);
        var known = forecast?.Find(history.Lobe);
        var reason = known is not null ? (NoForecastReason?)null : forecast?.WhyNot[history.Lobe] ?? NoForecastReason.NoFit;
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
            [.. history.Legs.Select((leg, number) => LegOf(history, leg, number, time))],
            [.. history.Changes.Select(c => new Change(c.At, time.DayOf(c.When), c.Cut, c.CameOut, c.WentIn))],
            [.. history.LeftOut.Select(o => new LeftOutReading(
                o.At, time.DayOf(o.Reading.MeasuredAt), o.Reading.Stage, o.Reading.JobCardNumber, o.Reading.Go, o.Reading.NoGo, o.Why))],
            known is null ? null : OutlookOf(engine, forecast!, known, next),
            reason,
            reason is { } why ? DriftWords.WhyNot(why, version?.WhyNot) : null);
    }

    private static LegReadings LegOf(LobeHistory history, Leg leg, int number, WorkshopTime time) => new(
        number + 1,
        leg.Section,
        leg.Start,
        leg.Cut,
        leg.Origin,
        leg.FirstShim,
        [.. leg.Readings.Select(r => new Reading(
            r.Reading.Id, r.Reading.JobCardNumber, r.Reading.Stage, time.DayOf(r.Reading.MeasuredAt), r.At, r.Reading.Kind,
            r.Reading.Go, r.Reading.NoGo, r.Shim, r.ShimPartMm, r.LowerMm, r.UpperMm))],
        [.. ShimSteps.Of(history, number).Select(s => new Step(s.From, s.PartMm))]);

    private static Outlook OutlookOf(EngineDrift engine, EngineForecast forecast, LobeForecast known, NextCheck? next)
    {
        var fan = forecast.Fan(known.Lobe, Places(forecast, known));
        var present = fan.First(f => f.At == known.From).Mm;
        return new Outlook(
            known.Readings,
            known.From,
            DriftFigures.Mm(known.PresentMm)!.Value,
            DriftFigures.Mm(present[0])!.Value,
            DriftFigures.Mm(present[^1])!.Value,
            DriftFigures.Drift(known.DriftMm)!.Value,
            DriftFigures.Drift(known.DriftDeviationMm)!.Value,
            DriftFigures.Drift(known.DriftMm - (DriftFigures.NineInTen * known.DriftDeviationMm))!.Value,
            DriftFigures.Drift(known.DriftMm + (DriftFigures.NineInTen * known.DriftDeviationMm))!.Value,
            DriftFigures.Probability(forecast.OutsideBy(known.Lobe, known.From))!.Value,
            next is null ? null : DriftFigures.Probability(forecast.OutsideBy(known.Lobe, next.EngineAt)),
            [
                new Leaving(0.1, known.Earliest, engine.DayOf(known.Earliest)),
                new Leaving(0.5, known.Even, engine.DayOf(known.Even)),
                new Leaving(0.9, known.Latest, engine.DayOf(known.Latest)),
            ],
            [.. fan.Select(f => new FanUpright(f.At, [.. f.Mm.Select(mm => DriftFigures.Mm(mm)!.Value)]))]);
    }

    /// <summary>Along the present leg from its beginning, then on as far as it is of interest.</summary>
    private static IEnumerable<Distance> Places(EngineForecast forecast, LobeForecast known)
    {
        var origin = forecast.OriginOf(known.Lobe)!.Value;
        var furthest = known.Even is { } even && even > known.From ? 1.2m * (even - known.From).Metres : 0;
        var ahead = decimal.Clamp(furthest, LeastAhead.Metres, MostAhead.Metres);
        var back = (known.From - origin).Metres;
        return Enumerable.Range(0, 2).Select(i => origin + Distance.FromMetres(decimal.Round(back * i / 2)))
            .Concat(Enumerable.Range(0, FanAhead + 1).Select(i => known.From + Distance.FromMetres(decimal.Round(ahead * i / FanAhead))))
            .Distinct();
    }
}
