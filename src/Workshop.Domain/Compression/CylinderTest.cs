using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Compression;

/// <summary>How a cylinder was tested.</summary>
public enum CylinderTestMethod
{
    /// <summary>Highest pressure as the engine is turned over, the cylinder as it is.</summary>
    Dry,

    /// <summary>The same with a little oil put in, which seals the rings for a moment.</summary>
    Wet,

    /// <summary>How much of a steady pressure leaks, the piston at compression dead centre.</summary>
    LeakDown,
}

/// <summary>Where the air of a leak-down test is heard.</summary>
public enum AirPlace
{
    Intake,
    Exhaust,
    Crankcase,
    Coolant,
}

/// <summary>
/// One cylinder, tested in one way at one stage of a visit. Only ever added: a correction is a new row that supersedes the old one,
/// with who, when and why.
/// </summary>
public sealed class CylinderTest : IAttempt
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    public required int JobCardNumber { get; init; }

    public required int Cylinder { get; init; }

    public required CylinderTestMethod Method { get; init; }

    public required Stage Stage { get; init; }

    /// <summary>1 for the first of its kind at this stage of the visit, and so on; the last one counts.</summary>
    public required int Attempt { get; init; }

    /// <summary>The highest that was reached; of a leak-down the pressure that was let in.</summary>
    public required Pressure Pressure { get; init; }

    /// <summary>How much of it leaks, in per cent; leak-down only.</summary>
    public decimal? LossPercent { get; init; }

    public bool HeardAtIntake { get; init; }

    public bool HeardAtExhaust { get; init; }

    public bool HeardAtCrankcase { get; init; }

    public bool HeardInCoolant { get; init; }

    public required EngineWarmth Warmth { get; init; }

    /// <summary>Not asked of a leak-down, where nothing is drawn in.</summary>
    public bool ThrottleOpen { get; init; }

    /// <summary>How often it was turned over until the gauge rose no further; the highest counts.</summary>
    public int? Tries { get; init; }

    public Guid? InstrumentId { get; init; }

    public required Guid OdometerReadingId { get; init; }

    public required Instant MeasuredAt { get; init; }

    public required Guid MeasuredBy { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }

    /// <summary>What is tested once a stage, and again by the next attempt.</summary>
    public CylinderTestKey Key => new(Cylinder, Method, Stage);

    /// <summary>Where the air was heard, in the order of the words.</summary>
    public IReadOnlyList<AirPlace> HeardAt =>
    [
        .. HeardAtIntake ? [AirPlace.Intake] : Array.Empty<AirPlace>(),
        .. HeardAtExhaust ? [AirPlace.Exhaust] : Array.Empty<AirPlace>(),
        .. HeardAtCrankcase ? [AirPlace.Crankcase] : Array.Empty<AirPlace>(),
        .. HeardInCoolant ? [AirPlace.Coolant] : Array.Empty<AirPlace>(),
    ];
}

/// <summary>What is tested once a stage of a visit.</summary>
public readonly record struct CylinderTestKey(int Cylinder, CylinderTestMethod Method, Stage Stage);
