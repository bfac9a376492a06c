using NodaTime;

namespace Workshop.Domain.Contacts;

/// <summary>By what somebody is reached.</summary>
public enum ContactChannel
{
    Phone,
    Email,
    Letter,
}

/// <summary>
/// A person's word that the workshop may use a channel. It stands until it is withdrawn; of one person and channel one stands at a
/// time. What is withdrawn stays as a row, as it was given.
/// </summary>
public sealed class Consent
{
    /// <summary>The longest <see cref="HowGiven"/>.</summary>
    public const int LongestHow = 400;

    public required Guid Id { get; init; }

    public required Guid PersonId { get; init; }

    public required ContactChannel Channel { get; init; }

    /// <summary>The workshop's day on which it was given.</summary>
    public required LocalDate GivenOn { get; init; }

    /// <summary>"signed on job card 1042", "said on the telephone"; blanked by an erasure.</summary>
    public required string HowGiven { get; set; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Instant? WithdrawnAt { get; set; }

    /// <summary>Who entered the withdrawal.</summary>
    public Guid? WithdrawnBy { get; set; }
}
