using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>What a plan must keep to beside hours and what others have taken.</summary>
public sealed record PlanTerms
{
    /// <summary>Nothing is planned before.</summary>
    public required Instant Now { get; init; }

    /// <summary>The motorcycle does not come before.</summary>
    public Instant? NotBefore { get; init; }

    /// <summary>Handed over by then.</summary>
    public Instant? ReadyBy { get; init; }

    /// <summary>The work does not begin before: parts that are short are here by then.</summary>
    public Instant? PartsFrom { get; init; }

    /// <summary>The motorcycle stands in the workshop already: its arrival is behind it.</summary>
    public StandsHere? Here { get; init; }
}

/// <summary>A motorcycle that has arrived.</summary>
/// <param name="Arrival">As it was planned; absent where none was.</param>
/// <param name="ColdFrom">When the soak is over, counted from the engine's last stop.</param>
public sealed record StandsHere(Interval? Arrival, Instant ColdFrom);

/// <summary>What keeps a visit from a start.</summary>
public enum ObstacleKind
{
    /// <summary>The start is behind us.</summary>
    Past,

    /// <summary>The workshop is closed as the motorcycle would arrive.</summary>
    Closed,

    /// <summary>Outside of the technician's hours, or in a break.</summary>
    OffDuty,

    /// <summary>Absent: leave, repair, calibration.</summary>
    Away,

    /// <summary>Another visit has it.</summary>
    Taken,

    /// <summary>Every copy of a special tool is taken.</summary>
    ToolsTaken,

    /// <summary>The engine cannot be cold by then, counted from the first arrival that is possible.</summary>
    Soak,

    /// <summary>No place to stand through the soak.</summary>
    NoPlace,

    /// <summary>Parts are not here yet.</summary>
    Parts,

    /// <summary>It would be handed over after the time that the owner must have it by.</summary>
    ReadyBy,

    /// <summary>The visit would end beyond what can be planned, or no day is long enough for one of its phases.</summary>
    NoEnd,
}

/// <summary>One thing that stands in the way of a start.</summary>
/// <param name="Resource">Whose; absent where it is nobody's.</param>
/// <param name="Span">From when to when it stands in the way; absent where it does so for ever.</param>
public sealed record Obstacle(ObstacleKind Kind, Resource? Resource, Interval? Span);
