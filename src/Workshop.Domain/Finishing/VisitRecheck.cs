using NodaTime;

namespace Workshop.Domain.Finishing;

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
