using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Finishing;

/// <summary>
/// What is done again gets a new row that supersedes the one before, with who, when and why; the last attempt counts. Rows are
/// only ever added.
/// </summary>
public interface IAttempt
{
    Guid Id { get; }

    /// <summary>1 for the first, and so on.</summary>
    int Attempt { get; }
}

/// <summary>Of what it was read that the engine is hot.</summary>
public enum HotPart
{
    Coolant,
    Oil,
    CylinderHead,
}

/// <summary>The vacuum behind every throttle was read at one engine speed, with the engine hot.</summary>
public sealed class BalanceRun : IAttempt
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    /// <summary>As found: before anything was set. As left: after.</summary>
    public required Stage Stage { get; init; }

    public required int Attempt { get; init; }

    public required int SpeedRpm { get; init; }

    public required Temperature HotAt { get; init; }

    public required HotPart HotOf { get; init; }

    public required Guid GaugeId { get; init; }

    /// <summary>One for each cylinder, in order of number.</summary>
    public List<BalanceVacuum> Vacuums { get; init; } = [];

    public required Instant MeasuredAt { get; init; }

    public required Guid MeasuredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}

/// <summary>How far below the air's the pressure in one intake was.</summary>
public sealed class BalanceVacuum
{
    public required Guid RunId { get; init; }

    public required int Cylinder { get; init; }

    public required Pressure Vacuum { get; init; }
}

/// <summary>What one place looks like after the engine ran warm.</summary>
public enum LeakState
{
    Dry,

    /// <summary>Damp, but nothing runs or drips; said in words, watched.</summary>
    Weeping,

    /// <summary>Runs or drips: the visit is not signed off.</summary>
    Leaking,
}

/// <summary>One place was looked at after the engine ran warm.</summary>
public sealed class LeakLook : IAttempt
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    /// <summary>See <see cref="LeakPlace.Code"/>.</summary>
    public required string PlaceCode { get; init; }

    public required string PlaceName { get; init; }

    public required int Attempt { get; init; }

    public required LeakState State { get; init; }

    public Guid? WordsRemarkId { get; init; }

    /// <summary>How long the engine ran.</summary>
    public required int RunMinutes { get; init; }

    public required Instant LookedAt { get; init; }

    public required Guid LookedBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}

/// <summary>Why no test ride was ridden.</summary>
public enum WhyNotRidden
{
    NoPlate,
    NotInsured,
    Weather,
    OwnersWish,
    NotRoadworthy,
    Other,
}

/// <summary>The test ride, or the reason why there was none.</summary>
public sealed class TestRide : IAttempt
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required int Attempt { get; init; }

    /// <summary>Nothing where it was ridden.</summary>
    public WhyNotRidden? WhyNot { get; init; }

    /// <summary>Who rode; nothing where nobody did.</summary>
    public Guid? RiderId { get; init; }

    public Distance? Distance { get; init; }

    /// <summary>As it came back, where that was read.</summary>
    public Guid? OdometerReadingId { get; init; }

    /// <summary>What was noticed; or the reason in words.</summary>
    public Guid? WordsRemarkId { get; init; }

    /// <summary>When it came back; or when it was decided not to ride.</summary>
    public required Instant RiddenAt { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}

/// <summary>What is looked at once more after the work.</summary>
public enum RecheckPoint
{
    /// <summary>The engine once it has cooled again.</summary>
    Cooled,

    /// <summary>The oil level after the run.</summary>
    OilAfterRun,

    /// <summary>The torque of a fastener that settles.</summary>
    Torque,
}

/// <summary>Something was looked at once more. What concerns a camshaft's drive is a <see cref="CamTiming.CamRecheck"/>.</summary>
public sealed class VisitRecheck : IAttempt
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required RecheckPoint Point { get; init; }

    /// <summary>Of a torque.</summary>
    public string? FastenerCode { get; init; }

    public required int Attempt { get; init; }

    /// <summary>All was as it should be, or was put right there and then.</summary>
    public required bool InOrder { get; init; }

    /// <summary>What was found; asked where it was not in order.</summary>
    public Guid? WordsRemarkId { get; init; }

    /// <summary>Why the engine was not left to cool for as long as is asked.</summary>
    public Guid? EarlyRemarkId { get; init; }

    /// <summary>Of a torque.</summary>
    public Guid? WrenchId { get; init; }

    public required Instant RecheckedAt { get; init; }

    public required Guid RecheckedBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}

/// <summary>What became of the service reminder.</summary>
public enum ReminderOutcome
{
    Reset,

    /// <summary>The instruments have none.</summary>
    HasNone,

    /// <summary>Not reset, and why.</summary>
    NotReset,
}

/// <summary>What became of the service reminder on the instruments.</summary>
public sealed class ReminderReset : IAttempt
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required int Attempt { get; init; }

    public required ReminderOutcome Outcome { get; init; }

    public Guid? WordsRemarkId { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}

public enum CountWay
{
    /// <summary>To the engine.</summary>
    WentIn,

    /// <summary>Off the engine, on the bench again.</summary>
    CameBack,
}

/// <summary>
/// Pieces were counted in or back, or a tap too many was taken back. Taps add up, so it does not matter in which order a device
/// sends them.
/// </summary>
public sealed class CountTap
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    /// <summary>See <see cref="CountedThing.Code"/>.</summary>
    public required string ThingCode { get; init; }

    public required string ThingName { get; init; }

    public required CountWay Way { get; init; }

    /// <summary>Not 0; below 0 where taps are taken back.</summary>
    public required int Change { get; init; }

    public required Guid CountedBy { get; init; }

    public required Instant CountedAt { get; init; }
}

/// <summary>Where what did not come back is: it holds for this difference only.</summary>
public sealed class CountExplanation
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required string ThingCode { get; init; }

    /// <summary>Came back less went in.</summary>
    public required int Difference { get; init; }

    public required Guid WordsRemarkId { get; init; }

    public required Guid ExplainedBy { get; init; }

    public required Instant ExplainedAt { get; init; }
}
