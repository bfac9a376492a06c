using NodaTime;

namespace Workshop.Domain.TorqueSheets;

/// <summary>
/// A fastener of the torque sheet was tightened: who, when, with which wrench. Only ever added; a tick that is taken back is
/// superseded by one that says so.
/// </summary>
public sealed class FastenerTick
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required string FastenerCode { get; init; }

    /// <summary>False where the tick is taken back.</summary>
    public required bool Tightened { get; init; }

    public Guid? WrenchId { get; init; }

    /// <summary>What was between wrench and fastener, if anything.</summary>
    public Guid? AdapterId { get; init; }

    /// <summary>Between the adapter and the wrench's axis: 0 straight on, 90 across, 180 back along the wrench.</summary>
    public decimal? AdapterAngleDegrees { get; init; }

    /// <summary>What was dialled for the final torque, in the wrench's own unit.</summary>
    public decimal? Dialled { get; init; }

    /// <summary>
    /// How often the wrench clicked for it; see <see cref="WrenchCycles"/>. Stays counted when the tick is taken back; nothing where
    /// the tick is one that takes back.
    /// </summary>
    public int? Cycles { get; init; }

    public Guid? SupersedesId { get; init; }

    public required Guid TickedBy { get; init; }

    public required Instant TickedAt { get; init; }
}

/// <summary>A second person looked at a tick and confirms it. Only ever added; falls with its tick.</summary>
public sealed class TickWitness
{
    public required Guid TickId { get; init; }

    public required Guid WitnessedBy { get; init; }

    public required Instant WitnessedAt { get; init; }
}

/// <summary>The workshop asks for a second person at this fastener of this engine model.</summary>
public sealed class SecondPersonMark
{
    public required Guid EngineModelId { get; init; }

    public required string FastenerCode { get; init; }

    public required Guid MarkedBy { get; init; }

    public required Instant MarkedAt { get; init; }
}
