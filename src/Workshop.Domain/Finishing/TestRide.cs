using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Finishing;

/// <summary>Why no test ride was ridden.</summary>
public enum WhyNotRidden
{
    NoPlate,
    NotInsured,
    Weather,
    OwnersWish,
    NotRoadworthy,
    Other,
}

/// <summary>The test ride, or the reason why there was none.</summary>
public sealed class TestRide : IAttempt
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required int Attempt { get; init; }

    /// <summary>Nothing where it was ridden.</summary>
    public WhyNotRidden? WhyNot { get; init; }

    /// <summary>Who rode; nothing where nobody did.</summary>
    public Guid? RiderId { get; init; }

    public Distance? Distance { get; init; }

    /// <summary>As it came back, where that was read.</summary>
    public Guid? OdometerReadingId { get; init; }

    /// <summary>What was noticed; or the reason in words.</summary>
    public Guid? WordsRemarkId { get; init; }

    /// <summary>When it came back; or when it was decided not to ride.</summary>
    public required Instant RiddenAt { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}
