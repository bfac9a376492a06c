using NodaTime;

namespace Workshop.Domain.Contacts;

/// <summary>How far a message is.</summary>
public enum OutboxState
{
    /// <summary>To be sent at its next try; without one, to be copied and sent by hand.</summary>
    Waiting,

    /// <summary>A copy of the service has it in hand until its claim ends.</summary>
    BeingSent,

    /// <summary>The mail server has accepted it.</summary>
    Sent,

    /// <summary>Refused for good, or tried often enough.</summary>
    Failed,

    /// <summary>It was in hand and nothing came back: it may have been sent or not, and a person decides.</summary>
    Uncertain,

    /// <summary>Sent by hand.</summary>
    Copied,

    /// <summary>Not to be sent.</summary>
    Discarded,
}

/// <summary>A letter or an e-mail on its way. It is never sent twice without a person's word.</summary>
public sealed class OutboxMessage
{
    public const int LongestFault = 400;

    public required Guid Id { get; init; }

    public required Guid PersonId { get; init; }

    public required Guid MotorcycleId { get; init; }

    public required ContactChannel Channel { get; init; }

    /// <summary>The address of an e-mail, the name on a letter.</summary>
    public required string To { get; set; }

    public required string Subject { get; set; }

    public required string Body { get; set; }

    public OutboxState State { get; set; } = OutboxState.Waiting;

    /// <summary>Tries begun since it was last put in line.</summary>
    public int Attempts { get; set; }

    public Instant? NextTryAt { get; set; }

    /// <summary>When it counts as uncertain, if nothing comes back before.</summary>
    public Instant? ClaimedUntil { get; set; }

    /// <summary>Of the claim that may write a result.</summary>
    public Guid? ClaimId { get; set; }

    /// <summary>Of the mail's header, given at its first try and kept (RFC 5322, 3.6.4).</summary>
    public string? InternetMessageId { get; set; }

    public string? LastFault { get; set; }

    public required Guid CreatedBy { get; init; }

    public required Instant CreatedAt { get; init; }

    /// <summary>Who sent it by hand, or said that it counts as sent; absent where the service itself sent it.</summary>
    public Guid? SentBy { get; set; }

    public Instant? SentAt { get; set; }
}
