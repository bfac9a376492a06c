using NodaTime;

namespace Workshop.Domain.JobCards;

public enum JobCardState
{
    Booked,
    CheckedIn,
    SignedOff,
    Cancelled,

    /// <summary>The motorcycle did not come, and nobody called it off.</summary>
    NoShow,
}

/// <summary>
/// One visit. The card itself knows who comes with what and how far the visit is; each stage (kit, torque, readings, shims,
/// sign-off) is an aggregate of its own, keyed by the card's number.
/// </summary>
public sealed class JobCard
{
    public int Number { get; init; }

    public required Guid MotorcycleId { get; init; }

    public required Guid EngineId { get; init; }

    /// <summary>The specification that holds for this visit, whatever becomes of the engine model later.</summary>
    public required Guid EngineModelVersionId { get; init; }

    public JobCardState State { get; set; } = JobCardState.Booked;

    public required Guid BookedBy { get; init; }

    public required Instant BookedAt { get; init; }

    /// <summary>When the motorcycle is to arrive and to be ready; what happens between stands in the planned phases.</summary>
    public required Instant StartsAt { get; set; }

    public required Instant EndsAt { get; set; }

    /// <summary>Counts the changes of the plan since the booking, from 0: the sequence number of its calendar events.</summary>
    public int PlanRevision { get; set; }
}

public enum Likelihood
{
    /// <summary>Will be done.</summary>
    Certain,

    /// <summary>An adjustment that the forecast expects.</summary>
    Likely,

    /// <summary>An adjustment that cannot be ruled out.</summary>
    Possible,
}

public sealed class JobCardItem
{
    public required int JobCardNumber { get; init; }

    public required string ServiceItemCode { get; init; }

    public required Likelihood Likelihood { get; init; }

    /// <summary>When a likely or possible item was begun; until then it adds nothing to the torque sheet.</summary>
    public Instant? StartedAt { get; set; }
}

/// <summary>The motorcycle is here: what the owner said and what was seen.</summary>
public sealed class CheckIn
{
    public required int JobCardNumber { get; init; }

    public required Guid OdometerReadingId { get; init; }

    public Guid? OwnersWordsRemarkId { get; init; }

    public Guid? SeenOnArrivalRemarkId { get; init; }

    /// <summary>When the engine last ran; the cold soak counts from here.</summary>
    public required Instant EngineStoppedAt { get; init; }

    public required Guid CheckedInBy { get; init; }

    public required Instant CheckedInAt { get; init; }
}

/// <summary>The visit does not take place, called off or not come. Once per card; only ever added.</summary>
public sealed class Cancellation
{
    public required int JobCardNumber { get; init; }

    public required Guid ReasonRemarkId { get; init; }

    public required Guid CancelledBy { get; init; }

    public required Instant CancelledAt { get; init; }
}

/// <summary>Somebody read a caution at its stage. Only ever added.</summary>
public sealed class CautionAcknowledgement
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required string CautionCode { get; init; }

    public required Guid AcknowledgedBy { get; init; }

    public required Instant AcknowledgedAt { get; init; }
}

/// <summary>The end of a visit. Once per card; only ever added.</summary>
public sealed class SignOff
{
    public required int JobCardNumber { get; init; }

    public required Guid OdometerReadingId { get; init; }

    public required Guid SignedBy { get; init; }

    public required Instant SignedAt { get; init; }

    public Guid? RemarkId { get; init; }
}
