using System.Globalization;

namespace Workshop.Domain.EngineModels;

/// <summary>How a specification is said on page and paper.</summary>
public static class SpecificationWords
{
    public static string Spoken(this ValveTrainKind kind) => kind switch
    {
        ValveTrainKind.ShimUnderBucket => "shim under bucket",
        ValveTrainKind.ShimOverBucket => "shim over bucket",
        ValveTrainKind.ShimUnderFingerFollower => "shim under finger follower",
        ValveTrainKind.ScrewAndLocknut => "screw and locknut",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>A special tool as a person says it: "degree-wheel-kit" is a degree wheel kit.</summary>
    public static string SpokenTool(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return code.Replace('-', ' ');
    }

    public static string Spoken(this Side side) => side == Side.Intake ? "intake" : "exhaust";

    public static string Spoken(this TurningDirection turning) =>
        turning == TurningDirection.Clockwise ? "clockwise" : "anticlockwise";

    /// <summary>
    /// "every 24,000 km", "every 12,000 km or 12 months, first at 1,000 km or 3 months", "once at 1,000 km", "when needed"; then what
    /// is particular: the date before which it is not due, the fixed grid, severe use.
    /// </summary>
    public static string Spoken(this ServiceInterval? interval)
    {
        if (interval is null)
        {
            return "when needed";
        }

        var said = interval.Once ? Once(interval) : Every(interval);
        var after = interval.AfterDate is { } day && (!interval.Once || interval.First is not null || interval.FirstMonths is not null)
            ? $", not before {day:uuuu-MM-dd}"
            : "";
        var grid = interval.Counting == CountingRule.OnFixedGrid ? ", counted from new" : "";
        return $"{said}{after}{grid}{Severe(interval.Severe)}";
    }

    /// <summary>"model years 2021 to 2023, with chain oiler, without quick shifter"; empty where every motorcycle has it.</summary>
    /// <param name="only">Which motorcycles have the item.</param>
    /// <param name="options">Of the engine model.</param>
    public static string Spoken(this Applicability? only, IReadOnlyList<FittedOption> options)
    {
        var years = (only?.FromModelYear, only?.ToModelYear) switch
        {
            ({ } from, { } to) when from == to => $"model year {from}",
            ({ } from, { } to) => $"model years {from} to {to}",
            ({ } from, null) => $"from model year {from}",
            (null, { } to) => $"up to model year {to}",
            _ => null,
        };
        var with = only?.WithOptions.Select(o => $"with {Named(o)}") ?? [];
        var without = only?.WithoutOptions.Select(o => $"without {Named(o)}") ?? [];
        return string.Join(", ", new[] { years }.OfType<string>().Concat(with).Concat(without));

        string Named(string code) => options.FirstOrDefault(o => o.Code == code)?.Name ?? code;
    }

    /// <summary>Which document, which edition, and who compared with it; nobody is said.</summary>
    public static string Spoken(this Provenance provenance)
    {
        ArgumentNullException.ThrowIfNull(provenance);
        var by = provenance.CheckedBy is { } name ? $"checked by {name}" : "checked by nobody yet";
        return $"{provenance.Document()}, {by}";
    }

    /// <summary>Which document and which edition: "Service manual, edition 3".</summary>
    public static string Document(this Provenance provenance)
    {
        ArgumentNullException.ThrowIfNull(provenance);

        // A bare number needs the word; "second printing" or "edition 3, sheet 20" does not.
        var edition = provenance.Edition is [var first, ..] && char.IsAsciiDigit(first) ? $"edition {provenance.Edition}" : provenance.Edition;
        return $"{provenance.Source}, {edition}";
    }

    private static string Every(ServiceInterval interval)
    {
        var every = $"every {Both(interval.Every?.Kilometres, interval.EveryMonths, interval.EveryMiles)}";
        return interval.First is null && interval.FirstMonths is null
            ? every
            : $"{every}, first at {Both(interval.First?.Kilometres ?? interval.Every?.Kilometres, interval.FirstMonths ?? interval.EveryMonths, interval.First is null ? interval.EveryMiles : interval.FirstMiles)}";
    }

    private static string Once(ServiceInterval interval) => interval.First is null && interval.FirstMonths is null
        ? $"once, after {interval.AfterDate:uuuu-MM-dd}"
        : $"once at {Both(interval.First?.Kilometres, interval.FirstMonths, interval.FirstMiles)}";

    private static string Severe(SevereUse? severe) =>
        severe is null ? ""
        : severe.Factor is { } factor ? string.Create(CultureInfo.InvariantCulture, $"; ridden hard at {factor:0.##} of that")
        : severe.Every is null && severe.EveryMonths is null ? $"; ridden hard first at {Both(severe.First?.Kilometres, severe.FirstMonths, severe.FirstMiles)}"
        : $"; ridden hard every {Both(severe.Every?.Kilometres, severe.EveryMonths, severe.EveryMiles)}";

    private static string Both(decimal? kilometres, int? months, int? miles = null)
    {
        var inMiles = miles is { } mi ? string.Create(CultureInfo.InvariantCulture, $" ({mi:#,0} mi)") : "";
        var distance = kilometres is { } km ? string.Create(CultureInfo.InvariantCulture, $"{km:#,0} km{inMiles}") : null;
        var time = months is { } m ? $"{m} months" : null;
        return (distance, time) switch
        {
            ({ } d, { } t) => $"{d} or {t}",
            _ => distance ?? time ?? "",
        };
    }
}
