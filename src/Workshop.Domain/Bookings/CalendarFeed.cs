using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>
/// A link under which the visits of one bay or technician can be read as an iCalendar. Whoever has the link can read it, so only
/// a digest of its secret is kept, and it can be revoked.
/// </summary>
public sealed class CalendarFeed
{
    public required Guid Id { get; init; }

    public required Guid ResourceId { get; init; }

    /// <summary>SHA-256 of the secret in the link.</summary>
    public required byte[] SecretDigest { get; init; }

    public required Guid CreatedBy { get; init; }

    public required Instant CreatedAt { get; init; }

    public Instant? RevokedAt { get; set; }
}
