using NodaTime;
using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Statistics;
using Workshop.Web.Features.Drift;

namespace Workshop.Web.Features.CamTiming;

/// <summary>What is known and foretold of one chain, as the API answers and pages show it.</summary>
public static class ChainWearView
{
    public const string Caution = "An estimate from what was read, no promise; it replaces no check that the maker prescribes.";

    /// <param name="Unit">"mm" of extension, or "°" of mean retard in crank degrees.</param>
    /// <param name="Readings">In order; of the present chain.</param>
    /// <param name="Forecast">Absent where <paramref name="WhyNot"/> says why.</param>
    public sealed record Chain(
        string Drive, string DriveName, WearMeasure Measure, string Unit, decimal Limit, IReadOnlyList<Read> Readings, Outlook? Forecast, string? WhyNot,
        string Words);

    /// <param name="To">Absent where the tensioner stood at its stop.</param>
    public sealed record Read(Distance EngineKm, decimal From, decimal? To);

    /// <param name="PerTenThousandKm">Mean growth.</param>
    /// <param name="BeyondNow">The probability that the limit was passed at the last reading.</param>
    /// <param name="ReachedAt10Km">What the engine will have done when the limit is reached with a probability of 10 %; absent where not within reach.</param>
    public sealed record Outlook(
        WearBasis Basis, Distance FromKm, decimal Present, decimal PresentDeviation, decimal PerTenThousandKm, decimal PerTenThousandKmDeviation,
        double BeyondNow, Distance? ReachedAt10Km, Distance? ReachedAt50Km, Distance? ReachedAt90Km,
        LocalDate? ReachedOn10, LocalDate? ReachedOn50, LocalDate? ReachedOn90, IReadOnlyList<Fan> Fan);

    public sealed record Fan(Distance EngineKm, decimal Low, decimal Middle, decimal High);

    /// <summary>Every measure of every drive of an engine that has a limit and was ever read; where none was, the tensioner with its reason.</summary>
    internal static IReadOnlyList<Chain> Of(ChainsOfEngine engine, Func<CamDrive, WearMeasure, ChainWearFit?> model, OdometerUnit unit) =>
        [.. engine.Specification.CamDrives.SelectMany(drive => Enum.GetValues<WearMeasure>()
            .Select(measure => (measure, limit: ChainsOfEngine.LimitOf(drive, measure), lives: engine.Lives(drive, measure)))
            .Where(m => m.limit is > 0 && (m.lives.Count > 0 || m.measure == WearMeasure.TensionerExtension))
            .Select(m => Chained(engine.Engine, drive, m.measure, m.limit!.Value, m.lives, model(drive, m.measure), unit)))];

    private static Chain Chained(
        EngineDrift engine, CamDrive drive, WearMeasure measure, double limit, IReadOnlyList<ChainLife> lives, ChainWearFit? model, OdometerUnit odometer)
    {
        var present = lives.Count > 0 ? lives[^1] : null;
        Computed<ChainForecast> found = present is null
            ? new NotComputable(NotComputableReason.TooFewPoints, "The chain was not read yet.")
            : ChainWear.Forecast(present, measure, limit, model);
        var unit = measure == WearMeasure.TensionerExtension ? "mm" : "°";
        var outlook = found.HasValue ? Say(engine, found.Value) : null;
        return new Chain(
            drive.Code, drive.Name, measure, unit, (decimal)limit,
            [.. (present?.Readings ?? []).Select(r => new Read(r.At, Rounded(r.Lower), double.IsInfinity(r.Upper) ? null : Rounded(r.Upper)))],
            outlook, found.WhyNot?.Explanation,
            found.HasValue ? ChainWearWords.Of(found.Value, drive, measure, limit, odometer, outlook!.ReachedOn50) : $"{CamTimingModel.Capital(measure.Spoken())}, {drive.Name}: no forecast. {found.WhyNot.Explanation}");
    }

    private static Outlook Say(EngineDrift engine, ChainForecast f) => new(
        f.Basis, f.From, Rounded(f.Present), Rounded(f.PresentDeviation), Rounded(f.Slope), Rounded(f.SlopeDeviation), Math.Round(f.BeyondNow, 4),
        Whole(f.Earliest), Whole(f.Even), Whole(f.Latest), engine.DayOf(f.Earliest), engine.DayOf(f.Even), engine.DayOf(f.Latest),
        [.. f.Fan.Select(p => new Fan(p.At, Rounded(p.Low), Rounded(p.Middle), Rounded(p.High)))]);

    private static Distance? Whole(Distance? distance) => distance is { } d ? Distance.FromKilometres(decimal.Round(d.Kilometres)) : null;

    private static decimal Rounded(double value) => decimal.Round((decimal)value, 3);
}
