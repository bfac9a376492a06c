using NodaTime;

namespace Workshop.Domain.Records;

/// <summary>
/// The record of a card as it was written, once: at the sign-off, or later for a card that was signed before records were kept.
/// Only ever added; an erasure empties the words and changes nothing else.
/// </summary>
public sealed class IssuedRecord
{
    public required int JobCardNumber { get; init; }

    public required Instant IssuedAt { get; init; }

    public required Guid IssuedBy { get; init; }

    /// <summary>Written after the sign-off, from what then stood: due and expected are those of that later day.</summary>
    public required bool IsLater { get; init; }

    public required ServiceRecord Document { get; init; }

    /// <summary>What people wrote, by the names of <see cref="RecordWords"/>.</summary>
    public required IReadOnlyDictionary<string, string> Words { get; init; }
}

/// <summary>
/// An address under which whoever has it reads one record until a day. What is kept of its secret is a digest.
/// </summary>
public sealed class RecordLink
{
    /// <summary>Days to live, where nobody says.</summary>
    public const int UsualDays = 30;

    public const int MostDays = 365;

    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required byte[] SecretDigest { get; init; }

    public required Guid CreatedBy { get; init; }

    public required Instant CreatedAt { get; init; }

    /// <summary>From then on it leads nowhere.</summary>
    public required Instant ExpiresAt { get; init; }

    public Instant? RevokedAt { get; set; }

    /// <summary>Absent also where an erasure ended it.</summary>
    public Guid? RevokedBy { get; set; }

    /// <summary>How often page or PDF was opened.</summary>
    public int Opened { get; set; }

    public Instant? LastOpenedAt { get; set; }

    /// <summary>How it stands at a time.</summary>
    public RecordLinkState StateAt(Instant now) => RevokedAt is not null ? RecordLinkState.Revoked
        : now >= ExpiresAt ? RecordLinkState.Expired
        : RecordLinkState.Open;
}

public enum RecordLinkState
{
    Open,
    Expired,
    Revoked,
}
