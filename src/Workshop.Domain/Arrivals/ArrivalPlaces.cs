using Workshop.Domain.Outcomes;
using static Workshop.Domain.Arrivals.ArrivalSubject;

namespace Workshop.Domain.Arrivals;

/// <summary>
/// Where a fluid usually leaks and what is usually damaged, so that a tap says it. What is usual is common practice, no source. A place is
/// kept as its words, as if somebody had typed them.
/// </summary>
public static class ArrivalPlaces
{
    /// <summary>At none of the usual places: words say where.</summary>
    public const string Elsewhere = "elsewhere";

    private static readonly Dictionary<(ArrivalKind, ArrivalSubject), string[]> Usual = new()
    {
        [(ArrivalKind.Leak, EngineOil)] =
        [
            "cylinder head cover", "cylinder head joint", "cylinder base", "cam chain tensioner", "left crankcase cover", "right crankcase cover", "crankcase joint",
            "output shaft seal", "sump", "drain plug", "oil filter", "oil line", "oil cooler",
        ],
        [(ArrivalKind.Leak, Coolant)] = ["radiator", "hose", "water pump", "thermostat housing", "cylinder head joint", "expansion tank", "drain plug"],
        [(ArrivalKind.Leak, BrakeFluid)] =
        [
            "front master cylinder", "front brake line", "front caliper", "rear master cylinder", "rear brake line", "rear caliper", "clutch line", "clutch cylinder",
        ],
        [(ArrivalKind.Leak, ForkOil)] = ["left fork leg", "right fork leg", "both fork legs", "rear damper", "steering damper"],
        [(ArrivalKind.Leak, Fuel)] = ["tank", "fuel tap", "fuel line", "fuel pump", "carburettors", "throttle bodies"],
        [(ArrivalKind.Leak, FinalDriveOil)] = ["drive housing", "pinion seal", "seal at the wheel", "shaft gaiter", "filler plug", "drain plug"],
        [(ArrivalKind.Damage, Front)] =
            ["front fairing", "screen", "headlamp", "instruments", "indicator", "front mudguard", "front wheel", "front brake disc", "fork"],
        [(ArrivalKind.Damage, LeftSide)] =
        [
            "left fairing", "left mirror", "left handlebar end", "clutch lever", "gear lever", "left footrest", "left crankcase cover", "left silencer", "frame",
            "swinging arm",
        ],
        [(ArrivalKind.Damage, RightSide)] =
        [
            "right fairing", "right mirror", "right handlebar end", "brake lever", "brake pedal", "right footrest", "right crankcase cover", "right silencer", "frame",
            "swinging arm",
        ],
        [(ArrivalKind.Damage, Rear)] = ["tail fairing", "rear lamp", "indicator", "number plate holder", "rear mudguard", "rear wheel", "rear brake disc", "luggage rack"],
        [(ArrivalKind.Damage, TankOrSeat)] = ["tank", "filler cap", "seat", "pillion seat", "side cover"],
    };

    /// <summary>The usual places, in the order of a form; none where only words tell.</summary>
    public static IReadOnlyList<string> Of(ArrivalKind kind, ArrivalSubject subject) => Usual.GetValueOrDefault((kind, subject)) ?? [];

    /// <summary>"drain plug", "drain plug: since last winter", "behind the horn"; nothing where nothing is said.</summary>
    /// <param name="place">One of the usual places, or <see cref="Elsewhere"/>.</param>
    /// <param name="words">What is said beside it.</param>
    public static string? Sentence(string? place, string? words)
    {
        var (at, more) = (Named(place), string.IsNullOrWhiteSpace(words) ? null : words.Trim());
        return at is null || at == Elsewhere ? more : more is null ? at : $"{at}: {more}";
    }

    /// <summary>What stands against a place; nothing where it is one of the usual ones, elsewhere or not given.</summary>
    /// <param name="path">Of the row as the caller wrote it.</param>
    /// <param name="kind">As typed.</param>
    /// <param name="subject">As typed.</param>
    /// <param name="place">As typed.</param>
    public static FieldFault? FaultOf(string path, ArrivalKind kind, ArrivalSubject? subject, string? place)
    {
        if (Named(place) is not { } at)
        {
            return null;
        }

        var usual = subject is { } of ? Of(kind, of) : [];
        return usual.Count == 0
            ? new FieldFault($"{path}.place", $"{path}.place is \"{at}\": of {subject?.Spoken() ?? kind.Spoken()} there are no usual places; say it in words.")
            : at == Elsewhere || usual.Contains(at, StringComparer.Ordinal)
            ? null
            : new FieldFault($"{path}.place", $"{path}.place is \"{at}\": one of {string.Join(", ", usual)} or {Elsewhere} is allowed.");
    }

    private static string? Named(string? place) => string.IsNullOrWhiteSpace(place) ? null : place.Trim();
}
