using NodaTime;

namespace Workshop.Web.Http;

/// <summary>
/// What a write answered, kept in the write's own transaction under the caller's idempotency key: the same key again gets the
/// same answer and nothing is written twice.
/// </summary>
public sealed class StoredAnswer
{
    public required Guid PersonId { get; init; }

    /// <summary>The use case, and what it was addressed to: the route's meaning, free of its host and casing.</summary>
    public required string UseCase { get; init; }

    public required string Key { get; init; }

    /// <summary>SHA-256 of the request; the same key with another request is refused.</summary>
    public required byte[] RequestHash { get; init; }

    public required string Answer { get; init; }

    public required Instant AnsweredAt { get; init; }
}
