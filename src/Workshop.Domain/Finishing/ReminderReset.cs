using NodaTime;

namespace Workshop.Domain.Finishing;

/// <summary>What became of the service reminder.</summary>
public enum ReminderOutcome
{
    Reset,

    /// <summary>The instruments have none.</summary>
    HasNone,

    /// <summary>Not reset, and why.</summary>
    NotReset,
}

/// <summary>What became of the service reminder on the instruments.</summary>
public sealed class ReminderReset : IAttempt
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required int Attempt { get; init; }

    public required ReminderOutcome Outcome { get; init; }

    public Guid? WordsRemarkId { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}
