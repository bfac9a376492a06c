using NodaTime;

namespace Workshop.Domain.Clearances;

/// <summary>
/// Somebody turned the crankshaft to a measuring position and looked: the mark is right, and the lobes of the valves that are
/// measured there point away. The last one of a visit says where the crankshaft stands. Only ever added.
/// </summary>
public sealed class PositionConfirmation
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required Stage Stage { get; init; }

    /// <summary>The position's name in the specification that the card pinned.</summary>
    public required string Position { get; init; }

    public required Guid ConfirmedBy { get; init; }

    public required Instant ConfirmedAt { get; init; }
}
