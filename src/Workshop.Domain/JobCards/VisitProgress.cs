using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.JobCards;

/// <summary>A phase of a visit was begun; the phase before it ended then. Only ever added; the last one is where the visit is.</summary>
public sealed class PhaseStart
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required VisitPhase Phase { get; init; }

    /// <summary>Who works on it, where the phase has a technician.</summary>
    public Guid? TechnicianId { get; init; }

    public required Instant StartedAt { get; init; }

    /// <summary>Why it began before its time: on a warm engine, before sealant was hard.</summary>
    public Guid? ReasonRemarkId { get; init; }

    public required Guid EnteredBy { get; init; }
}

/// <summary>
/// The engine ran again and stopped: the cold soak counts from the last stop. The first stop of a visit stands in its check-in.
/// Only ever added.
/// </summary>
public sealed class EngineStop
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required Instant StoppedAt { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }
}

/// <summary>The motorcycle was pushed to another place, with what its tag says ("no oil, do not start"). Only ever added.</summary>
public sealed class MotorcycleMove
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    /// <summary>The bay or parking place that it stands in from then on.</summary>
    public required Guid ResourceId { get; init; }

    public Guid? TagRemarkId { get; init; }

    public required Instant MovedAt { get; init; }

    public required Guid MovedBy { get; init; }
}

public enum WaitsFor
{
    Shims,
    OtherParts,
    OwnersWord,
}

/// <summary>An engine lies open and waits; its bay stays taken until then, or until it is moved.</summary>
public sealed class VisitWait
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required WaitsFor For { get; init; }

    public required Instant Since { get; init; }

    /// <summary>When work is expected to go on.</summary>
    public required Instant ExpectedUntil { get; set; }

    public Instant? EndedAt { get; set; }

    public Guid? RemarkId { get; init; }

    public required Guid EnteredBy { get; init; }
}
