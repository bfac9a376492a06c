using NodaTime;

namespace Workshop.Domain.Contacts;

/// <summary>What came of trying to hand a message to the mail server.</summary>
public enum DeliveryResult
{
    Accepted,

    /// <summary>Not reached, or a reply of 4yz: it was not taken, and may be later (RFC 5321, 4.2.1).</summary>
    RefusedForNow,

    /// <summary>A reply of 5yz: it will never be taken as it is.</summary>
    RefusedForGood,

    /// <summary>The line broke after the text went out and before the answer came.</summary>
    Unknown,
}

/// <summary>What to do after a try.</summary>
/// <param name="State">How the message then stands.</param>
/// <param name="NextTryAt">When it is tried again; only while it waits.</param>
public readonly record struct AfterTry(OutboxState State, Instant? NextTryAt);

/// <summary>When a message is tried again (our own choice; RFC 5321, 4.5.4.1 asks for retries with growing pauses).</summary>
public static class RetryPlan
{
    /// <summary>The pauses after the first try and after each further one; after the last of them it has failed.</summary>
    public static readonly IReadOnlyList<Duration> Pauses =
        [Duration.FromMinutes(1), Duration.FromMinutes(5), Duration.FromMinutes(30), Duration.FromHours(2), Duration.FromHours(8)];

    /// <summary>How a message stands after a try.</summary>
    /// <param name="result">What came of it.</param>
    /// <param name="attempts">Tries so far, this one included; 1 or more.</param>
    /// <param name="now">When the answer came.</param>
    public static AfterTry Decide(DeliveryResult result, int attempts, Instant now)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(attempts, 1);
        return result switch
        {
            DeliveryResult.Accepted => new AfterTry(OutboxState.Sent, null),
            DeliveryResult.RefusedForGood => new AfterTry(OutboxState.Failed, null),
            DeliveryResult.Unknown => new AfterTry(OutboxState.Uncertain, null),
            DeliveryResult.RefusedForNow when attempts <= Pauses.Count => new AfterTry(OutboxState.Waiting, now + Pauses[attempts - 1]),
            DeliveryResult.RefusedForNow => new AfterTry(OutboxState.Failed, null),
            _ => throw new ArgumentOutOfRangeException(nameof(result), result, null),
        };
    }
}
