using NodaTime;
using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;

namespace Workshop.Web.Features.CamTiming;

/// <summary>How chain wear is said: what is likely, with its span.</summary>
internal static class ChainWearWords
{
    public static string Spoken(this WearMeasure measure) => measure == WearMeasure.TensionerExtension ? "extension of the tensioner" : "mean retard of its camshafts";

    public static string Of(ChainForecast f, CamDrive drive, WearMeasure measure, double limit, OdometerUnit unit, LocalDate? evenOn)
    {
        var symbol = measure == WearMeasure.TensionerExtension ? " mm" : "°";
        var grows = $"grows by {f.Slope:0.00}{symbol} in 10,000 km (± {f.SlopeDeviation:0.00})";
        var basis = f.Basis == WearBasis.EngineModel ? ", from its readings and those of other engines of the model" : $", from its {f.Readings} readings alone";
        var reach = f.BeyondNow > 0.5
            ? $"it has likely reached its limit of {limit:0.##}{symbol} already"
            : f.Even is { } even
            ? $"likely reaches its limit of {limit:0.##}{symbol} at {About(even, unit)} of the engine{(evenOn is { } day ? $", about {day:uuuu-MM}" : "")} ({Span(f, unit)})"
            : f.Earliest is { } early
            ? $"may reach its limit of {limit:0.##}{symbol} from {About(early, unit)} of the engine on"
            : $"does not reach its limit of {limit:0.##}{symbol} within {DueWords.InUnit(ChainWear.Reach, unit)}";
        return $"The {measure.Spoken()} of the {drive.Name} {grows}{basis}; {reach}.";
    }

    private static string Span(ChainForecast f, OdometerUnit unit) =>
        $"10 to 90 %: {About(f.Earliest!.Value, unit)} to {(f.Latest is { } latest ? About(latest, unit) : "beyond what is looked at")}";

    /// <summary>To a thousand: an estimate is no better than that.</summary>
    private static string About(Distance distance, OdometerUnit unit) =>
        $"{decimal.Round(unit.CountOf(distance) / 1000m) * 1000:#,0} {unit.Symbol()}";
}
