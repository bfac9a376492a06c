using NodaTime;

namespace Workshop.Domain.Finishing;

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
