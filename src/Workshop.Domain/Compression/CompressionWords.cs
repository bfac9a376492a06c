using System.Globalization;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Compression;

/// <summary>How tests of cylinders are said.</summary>
public static class CompressionWords
{
    /// <summary>"dry", "wet, with oil", "leak-down".</summary>
    public static string Spoken(this CylinderTestMethod method) => method switch
    {
        CylinderTestMethod.Dry => "dry",
        CylinderTestMethod.Wet => "wet, with oil",
        CylinderTestMethod.LeakDown => "leak-down",
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, null),
    };

    /// <summary>"intake", "exhaust", "crankcase", "coolant".</summary>
    public static string Spoken(this AirPlace place) => place switch
    {
        AirPlace.Intake => "intake",
        AirPlace.Exhaust => "exhaust",
        AirPlace.Crankcase => "crankcase",
        AirPlace.Coolant => "coolant",
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, null),
    };

    /// <summary>"warm", "cold".</summary>
    public static string Spoken(this EngineWarmth warmth) => warmth switch
    {
        EngineWarmth.Warm => "warm",
        EngineWarmth.Cold => "cold",
        _ => throw new ArgumentOutOfRangeException(nameof(warmth), warmth, null),
    };

    /// <summary>"within", "below the least", "uneven" and so on.</summary>
    public static string Spoken(this CylinderVerdict verdict) => verdict switch
    {
        CylinderVerdict.Within => "within",
        CylinderVerdict.Below => "below the least",
        CylinderVerdict.Uneven => "uneven",
        CylinderVerdict.Leaks => "leaks more than allowed",
        CylinderVerdict.NotJudged => "not judged",
        CylinderVerdict.NotMeasured => "not measured",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, null),
    };

    /// <summary>"1180 kPa (11.8 bar, 171 psi)": what a person reads on any gauge.</summary>
    public static string OnAnyGauge(this Pressure pressure) =>
        FormattableString.Invariant($"{pressure.Kilopascals:0.#} kPa ({pressure.Bar:0.0#} bar, {pressure.Psi:0} psi)");

    /// <summary>"1180 kPa (11.8 bar, 171 psi)", or "12 % of 600 kPa (6.0 bar, 87 psi), heard at exhaust".</summary>
    public static string Spoken(this CylinderTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        return test.Method != CylinderTestMethod.LeakDown
            ? test.Pressure.OnAnyGauge()
            : string.Create(CultureInfo.InvariantCulture,
                $"{test.LossPercent:0.#} % of {test.Pressure.OnAnyGauge()}{(test.HeardAt.Count > 0 ? $", heard at {string.Join(" and ", test.HeardAt.Select(p => p.Spoken()))}" : "")}");
    }

    /// <summary>"at least 1100 kPa (11.0 bar, 160 psi) with a warm engine, cylinders within 100 kPa, leakage up to 15 %".</summary>
    public static string Spoken(this CompressionLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        var said = $"at least {limits.Least.OnAnyGauge()} with a {limits.Warmth.Spoken()} engine";
        said += limits.LargestDifference is { } difference ? $", cylinders within {Kpa(difference)} kPa of the best" : "";
        return limits.LargestLeakDownPercent is { } percent
            ? string.Create(CultureInfo.InvariantCulture, $"{said}, leakage up to {percent:0.#} %{(limits.LeakDownAt is { } at ? $" at {Kpa(at)} kPa" : "")}")
            : said;
    }

    internal static string Kpa(Pressure pressure) => pressure.Kilopascals.ToString("0.#", CultureInfo.InvariantCulture);
}
