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

    public static string Spoken(this Side side) => side == Side.Intake ? "intake" : "exhaust";

    public static string Spoken(this TurningDirection turning) =>
        turning == TurningDirection.Clockwise ? "clockwise" : "anticlockwise";

    /// <summary>"every 24,000 km", "every 12,000 km or 12 months, first at 1,000 km or 3 months", "when needed".</summary>
    public static string Spoken(this ServiceInterval? interval)
    {
        if (interval is null)
        {
            return "when needed";
        }

        var every = $"every {Both(interval.Every?.Kilometres, interval.EveryMonths)}";
        return interval.First is null && interval.FirstMonths is null
            ? every
            : $"{every}, first at {Both(interval.First?.Kilometres ?? interval.Every?.Kilometres, interval.FirstMonths ?? interval.EveryMonths)}";
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

    private static string Both(decimal? kilometres, int? months)
    {
        var distance = kilometres is { } km ? string.Create(CultureInfo.InvariantCulture, $"{km:#,0} km") : null;
        var time = months is { } m ? $"{m} months" : null;
        return (distance, time) switch
        {
            ({ } d, { } t) => $"{d} or {t}",
            _ => distance ?? time ?? "",
        };
    }
}
