using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>How a camshaft was checked.</summary>
public enum TimingMethod
{
    /// <summary>By the maker's alignment jig or marks: passes or not.</summary>
    Alignment,

    /// <summary>By degree wheel and lift at one stated lift.</summary>
    DegreeWheel,
}

/// <summary>
/// One check of one camshaft at one stage of a visit. Only ever added: a correction is a new row that supersedes the old one,
/// with who, when and why.
/// </summary>
public sealed class CamTimingCheck : IAttempt
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    public required int JobCardNumber { get; init; }

    public required string CamshaftCode { get; init; }

    public required Stage Stage { get; init; }

    public required TimingMethod Method { get; init; }

    /// <summary>The side that was measured; absent for an alignment check, which is of the whole shaft.</summary>
    public Side? Side { get; init; }

    /// <summary>1 for the first of its kind at this stage of the visit, and so on; the last one counts.</summary>
    public required int Attempt { get; init; }

    /// <summary>Alignment checks only.</summary>
    public bool? Passes { get; init; }

    /// <summary>Degree wheel only, as is what follows.</summary>
    public DeadCentreMethod? DeadCentre { get; init; }

    /// <summary>The wheel's reading before top dead centre at which stop or gauge stood.</summary>
    public CrankAngle? StopBefore { get; init; }

    /// <summary>The same after top dead centre.</summary>
    public CrankAngle? StopAfter { get; init; }

    public decimal? LiftMm { get; init; }

    public LiftStation? Station { get; init; }

    /// <summary>The crankshaft was turned in running direction only, and never back.</summary>
    public required bool InRunningDirection { get; init; }

    /// <summary>The degree wheel, or the alignment jig.</summary>
    public Guid? InstrumentId { get; init; }

    /// <summary>What showed lift.</summary>
    public Guid? DialGaugeId { get; init; }

    /// <summary>Repeats of a degree wheel, in their order.</summary>
    public List<CamTimingReading> Readings { get; init; } = [];

    public required Guid OdometerReadingId { get; init; }

    public required Instant MeasuredAt { get; init; }

    public required Guid MeasuredBy { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }

    /// <summary>What is checked once a stage, and again by the next attempt.</summary>
    public CheckKey Key => new(CamshaftCode, Stage, Method, Side);
}

/// <summary>What is checked once a stage of a visit.</summary>
public readonly record struct CheckKey(string Camshaft, Stage Stage, TimingMethod Method, Side? Side);

/// <summary>One turn of the crankshaft: where the wheel stood at the lift as it rose and as it fell.</summary>
public sealed class CamTimingReading
{
    public required Guid CheckId { get; init; }

    /// <summary>From 1, in the order in which they were taken.</summary>
    public required int Repeat { get; init; }

    public required CrankAngle Opens { get; init; }

    public required CrankAngle Closes { get; init; }
}

/// <summary>
/// How far a tensioner was out, and how long the chain, at one stage of a visit. Only ever added; a correction supersedes.
/// </summary>
public sealed class ChainReading : IAttempt
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    public required int JobCardNumber { get; init; }

    public required string DriveCode { get; init; }

    public required Stage Stage { get; init; }

    public required int Attempt { get; init; }

    /// <summary>Of the tensioner; absent where only the chain was measured, or it stood at its stop.</summary>
    public decimal? ExtensionMm { get; init; }

    /// <summary>The tensioner stood as far out as it goes: the chain may be longer.</summary>
    public bool AtStop { get; init; }

    /// <summary>Of as many links as the specification names, pulled straight.</summary>
    public decimal? LengthMm { get; init; }

    public Guid? InstrumentId { get; init; }

    public required Guid OdometerReadingId { get; init; }

    public required Instant MeasuredAt { get; init; }

    public required Guid MeasuredBy { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}

/// <summary>What of a drive was renewed.</summary>
public enum ChainChangeKind
{
    /// <summary>Chain or belt: a new leg and a new slope.</summary>
    ChainRenewed,

    /// <summary>A guide: a new leg, the same slope.</summary>
    GuideRenewed,

    /// <summary>The tensioner: a new leg, the same slope.</summary>
    TensionerRenewed,
}

/// <summary>Part of a drive was renewed at a visit. Only ever added.</summary>
public sealed class ChainChange
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    public required int JobCardNumber { get; init; }

    public required string DriveCode { get; init; }

    public required ChainChangeKind Kind { get; init; }

    public required Guid OdometerReadingId { get; init; }

    public required Instant HappenedAt { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }
}

/// <summary>
/// After the tensioner was fitted: somebody confirms that it went in at rest, that it has let go, and that what the maker
/// wants checked once more was. Only ever added.
/// </summary>
public sealed class CamRecheck
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required string DriveCode { get; init; }

    /// <summary>The wrench with which the sprocket bolts were checked once more, where the maker wants that.</summary>
    public Guid? WrenchId { get; init; }

    public required Guid ConfirmedBy { get; init; }

    public required Instant ConfirmedAt { get; init; }
}
