using System.Text.Json.Serialization;
using Workshop.Domain.Measures;

namespace Workshop.Domain.EngineModels;

/// <summary>What is looked at on a visit before and after the work.</summary>
public enum VisitCheckKind
{
    /// <summary>Leaks, damage, levels and lamps as it arrives.</summary>
    ArrivalState,

    /// <summary>Condition and gap of the spark plugs.</summary>
    Plugs,

    /// <summary>Compression or leak-down, cylinder by cylinder.</summary>
    Compression,

    /// <summary>Throttle bodies or carburettors balanced hot.</summary>
    Balance,

    /// <summary>Run warm and looked at: what weeps or leaks.</summary>
    LeakCheck,

    TestRide,

    /// <summary>Looked at once more: cooled, oil level after the run, fasteners that settle.</summary>
    Recheck,

    /// <summary>The service reminder on the instruments.</summary>
    ReminderReset,

    /// <summary>Parts and tools counted in and out.</summary>
    PartsCounted,
}

/// <summary>On which visits a check is asked for.</summary>
public enum WhenAsked
{
    Always,

    /// <summary>After certain service items.</summary>
    AfterItems,

    /// <summary>When a valve is found tight, or the owner complains of how it runs.</summary>
    TightOrComplaint,
}

/// <summary>
/// What the engine maker or the workshop asks for on a visit beside its service items; no visit is signed off without. Each kind
/// once. A re-check of the cooled engine stands in <see cref="AfterWork"/>, with its hours.
/// </summary>
public sealed record CheckOnVisit(VisitCheckKind Kind, WhenAsked Asked)
{
    /// <summary>Service items, by code, where it is asked for after these.</summary>
    public IReadOnlyList<string> AfterItems { get; init; } = [];

    /// <summary>What the maker says of it, in words.</summary>
    public string? Note { get; init; }

    /// <summary>Of a balance.</summary>
    public BalanceFigures? Balance { get; init; }

    /// <summary>Of a leak check: where to look beside the joints and seals that the visit opened.</summary>
    public IReadOnlyList<string> Places { get; init; } = [];

    /// <summary>Of a re-check: the oil level is looked at once more after the run.</summary>
    public bool OilAfterRun { get; init; }

    /// <summary>Of a re-check: fasteners, by code, whose torque is checked once more after the run.</summary>
    public IReadOnlyList<string> FastenersAgain { get; init; } = [];
}

/// <summary>How throttle bodies or carburettors are to be balanced.</summary>
/// <param name="SpeedRpm">The engine's speed for it.</param>
/// <param name="SpeedToleranceRpm">More or less by so much.</param>
/// <param name="Tolerance">The most that two cylinders may differ; with a reference cylinder, the most that any may differ from it.</param>
/// <param name="HotFrom">Coolant or oil is at least so hot; absent where the maker says no more than "hot".</param>
/// <param name="ReferenceCylinder">The one that has no screw and to which the others are set; absent where there is none.</param>
public sealed record BalanceFigures(
    int SpeedRpm,
    int SpeedToleranceRpm,
    [property: JsonPropertyName("toleranceKpa")] Pressure Tolerance,
    [property: JsonPropertyName("hotFromC")] Temperature? HotFrom = null,
    int? ReferenceCylinder = null);
