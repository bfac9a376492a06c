using NodaTime;

namespace Workshop.Domain.Contacts;

/// <summary>What came of speaking or writing to somebody.</summary>
public enum ContactOutcome
{
    /// <summary>Spoken to, nothing settled.</summary>
    Reached,

    /// <summary>Nobody answered.</summary>
    NotReached,

    /// <summary>Asked to be called back.</summary>
    CallsBack,

    /// <summary>A visit was agreed on.</summary>
    Booked,

    /// <summary>Does not want what was offered.</summary>
    Declined,

    /// <summary>A letter or an e-mail went out.</summary>
    Written,
}

/// <summary>Somebody was spoken or written to, or it was tried. Only ever added; what was said stands in a remark.</summary>
public sealed class Contact
{
    public required Guid Id { get; init; }

    public required Guid PersonId { get; init; }

    /// <summary>What it was about, where it was about one motorcycle.</summary>
    public Guid? MotorcycleId { get; init; }

    public required ContactChannel Channel { get; init; }

    public required Instant At { get; init; }

    /// <summary>Who of the workshop.</summary>
    public required Guid By { get; init; }

    public required ContactOutcome Outcome { get; init; }

    /// <summary>From which day on somebody who asked for it is called back; absent: at once.</summary>
    public LocalDate? CallBackOn { get; init; }

    public Guid? RemarkId { get; init; }

    /// <summary>The message that went out.</summary>
    public Guid? MessageId { get; init; }

    public required Instant EnteredAt { get; init; }
}
