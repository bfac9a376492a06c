using Microsoft.AspNetCore.Identity;
using NodaTime;

namespace Workshop.Web.Http;

/// <summary>A sign-in. Who it is stands with the person.</summary>
public sealed class Account : IdentityUser<Guid>
{
    /// <summary>A manager's lock, which no waiting ends; what too many wrong passwords lock opens again by itself.</summary>
    public static readonly DateTimeOffset ForGood = new(9999, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public required Guid PersonId { get; init; }

    public bool LockedByManager => LockoutEnd >= ForGood;
}

public enum SessionKind
{
    Cookie,
    Bearer,
}

/// <summary>
/// A sign-in that is open: behind a page's cookie or an API's bearer token. The token is random and opaque; only its hash
/// is here, so that the table gives nobody a way in.
/// </summary>
public sealed class Session
{
    public required Guid Id { get; init; }

    public required Guid AccountId { get; init; }

    public required SessionKind Kind { get; init; }

    public required byte[] TokenHash { get; init; }

    public required string Device { get; init; }

    public required Instant CreatedAt { get; init; }

    public required Instant ExpiresAt { get; init; }

    public Instant? RevokedAt { get; set; }
}
