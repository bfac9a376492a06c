using NodaTime;

namespace Workshop.Domain.Finishing;

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
