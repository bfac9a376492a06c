using NodaTime;

namespace Workshop.Domain.Arrivals;

/// <summary>What is looked at when a motorcycle comes.</summary>
public enum ArrivalKind
{
    /// <summary>What the owner complains of, as against what the owner only says.</summary>
    Complaint,
    Leak,
    Damage,
    Level,

    /// <summary>A warning lamp that stays on.</summary>
    Lamp,
    Tyre,
    FinalDrive,

    /// <summary>How much is in the tank.</summary>
    Fuel,

    /// <summary>What was left with the workshop.</summary>
    Left,
}

/// <summary>Of what: each belongs to one kind, or to several where a fluid both leaks and has a level.</summary>
public enum ArrivalSubject
{
    HardStarting,
    Misfire,
    Noise,
    LossOfPower,
    Smoke,
    EngineOil,
    Coolant,
    BrakeFluid,
    ForkOil,
    Fuel,
    FinalDriveOil,
    Front,
    LeftSide,
    RightSide,
    Rear,
    TankOrSeat,
    FrontBrake,
    RearBrake,
    Clutch,
    EngineLamp,
    OilPressureLamp,
    CoolantLamp,
    BrakeLamp,
    ChargingLamp,
    FrontTyre,
    RearTyre,
    Chain,
    Keys,
    Papers,
    Luggage,
    Other,
}

/// <summary>In which state it was.</summary>
public enum ArrivalState
{
    /// <summary>It is so: complained of, on, damaged, left here.</summary>
    Noted,

    /// <summary>Looked for, and nothing of the kind was there.</summary>
    NoneSeen,
    Weeping,
    Dripping,
    AtMark,
    Low,
    Over,
    NotReadable,

    /// <summary>This motorcycle has none.</summary>
    NotFitted,
    Good,
    Worn,
    Damaged,
    Slack,
    Dry,
    Reserve,
    Quarter,
    Half,
    ThreeQuarters,
    Full,
}

/// <summary>Whether something was seen before anybody touched the motorcycle, or only since.</summary>
public enum ArrivalStage
{
    OnArrival,

    /// <summary>Seen after the work was begun: it may not have been so on arrival.</summary>
    DuringWork,
}

/// <summary>
/// One thing that was seen of a motorcycle that came, or that its owner complains of. Only ever added: a correction is a new row
/// that supersedes the old one, with who, when and why; a struck one says that it was not so.
/// </summary>
public sealed class ArrivalNote
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required ArrivalStage Stage { get; init; }

    public required ArrivalKind Kind { get; init; }

    /// <summary>Absent where nothing of the kind was seen at all.</summary>
    public ArrivalSubject? Subject { get; init; }

    public required ArrivalState State { get; init; }

    /// <summary>The row that this one takes the place of was not so; nothing stands in its place.</summary>
    public bool Struck { get; init; }

    /// <summary>Where, what, how much, in words.</summary>
    public Guid? WordsRemarkId { get; init; }

    public required Guid NotedBy { get; init; }

    public required Instant NotedAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}
