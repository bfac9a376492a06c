using NodaTime;

namespace Workshop.Domain.Intervals;

/// <summary>
/// An item that somebody decided to do later, and why. It does not move the interval: the item stays due, but its motorcycle
/// comes up in the list on the day until which it was put off. Only ever added; the last one of an item counts, until it is done.
/// </summary>
public sealed class PutOff
{
    public const int LongestReason = 400;

    public required Guid Id { get; init; }

    public required Guid MotorcycleId { get; init; }

    public required string ServiceItemCode { get; init; }

    /// <summary>Absent where an earlier one is taken back.</summary>
    public LocalDate? Until { get; init; }

    public required string Reason { get; init; }

    /// <summary>The workshop's day on which it was decided: what is done from then on ends it.</summary>
    public required LocalDate DecidedOn { get; init; }

    public required Guid DecidedBy { get; init; }

    public required Instant DecidedAt { get; init; }
}
