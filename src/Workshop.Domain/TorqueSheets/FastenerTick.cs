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

    public Guid? SupersedesId { get; init; }

    public required Guid TickedBy { get; init; }

    public required Instant TickedAt { get; init; }
}
