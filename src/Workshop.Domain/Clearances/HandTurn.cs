using NodaTime;

namespace Workshop.Domain.Clearances;

/// <summary>
/// Somebody turned the crankshaft two full turns by hand in running direction, met no hard stop, and found the marks right
/// again. Only ever added.
/// </summary>
public sealed class HandTurn
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required Guid ConfirmedBy { get; init; }

    public required Instant ConfirmedAt { get; init; }
}
