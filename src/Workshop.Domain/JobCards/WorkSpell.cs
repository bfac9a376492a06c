using NodaTime;

namespace Workshop.Domain.JobCards;

/// <summary>Why somebody stops working on a job for now, or for good.</summary>
public enum PauseReason
{
    Break,

    /// <summary>Shims or other parts are not here.</summary>
    Parts,

    /// <summary>The owner's or the manager's word is wanted.</summary>
    Question,

    /// <summary>The engine soaks, sealant hardens.</summary>
    EngineStands,

    OtherJob,

    EndOfDay,

    /// <summary>Nothing is left to do.</summary>
    Finished,
}

/// <summary>
/// One stretch in which one person worked on one job. A person works on one job at a time; the database keeps that. It is said
/// of the job, never compared between people.
/// </summary>
public sealed class WorkSpell
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required Guid PersonId { get; init; }

    public required Instant StartedAt { get; init; }

    /// <summary>Absent while the clock runs.</summary>
    public Instant? EndedAt { get; set; }

    /// <summary>Absent while the clock runs.</summary>
    public PauseReason? EndedFor { get; set; }
}
