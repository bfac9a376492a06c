using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>The stages of a visit, in the order in which they come; a visit has those that it needs.</summary>
public enum VisitPhase
{
    /// <summary>Test run and complaint with a technician where asked for; warm oil drain where booked. The engine stops at its end.</summary>
    Arrival,

    /// <summary>The engine stands, in a parking place or a bay, without a technician.</summary>
    ColdSoak,

    /// <summary>Bay, technician and special tools.</summary>
    Work,

    /// <summary>Sealant hardens in the bay, before oil or heat comes to it.</summary>
    SealantCure,

    WarmRun,
    TestRide,

    /// <summary>Cold again, then looked at once more, where the engine model asks for it.</summary>
    CoolAndRecheck,

    /// <summary>Ready at its end.</summary>
    HandOver,

    /// <summary>Not planned: an engine lies open in its bay until shims or the owner's word come.</summary>
    Waiting,
}

/// <summary>A resource taken for a span of time by one visit. Spans are half open; no two live ones may overlap.</summary>
public sealed class Occupancy
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required VisitPhase Phase { get; init; }

    public required Guid ResourceId { get; init; }

    public required Interval Span { get; set; }

    /// <summary>False once the visit is moved or cancelled or the resource released; kept for the record.</summary>
    public bool Live { get; set; } = true;
}

/// <summary>
/// One phase of a visit as it is planned, from its first to its last minute: work that goes on after a break or on the next
/// day is one phase. What it takes of which resource, and when, stands in the occupancies of the same phase.
/// </summary>
public sealed class PlannedPhase
{
    public required int JobCardNumber { get; init; }

    public required VisitPhase Phase { get; init; }

    public required Interval Span { get; set; }
}

/// <summary>What the owner and the advisor agreed on for a visit; whoever moves it keeps to these, or asks.</summary>
public sealed class VisitWishes
{
    public required int JobCardNumber { get; init; }

    /// <summary>The motorcycle does not come before.</summary>
    public Instant? NotBefore { get; set; }

    /// <summary>Handed over by then.</summary>
    public Instant? ReadyBy { get; set; }

    public Guid? TechnicianId { get; set; }

    public Guid? BayId { get; set; }

    /// <summary>A technician runs it and hears the complaint as it arrives.</summary>
    public bool TestRunAtArrival { get; set; }

    /// <summary>Minutes of work in place of what the items add up to, when a person shortened or lengthened it.</summary>
    public int? WorkMinutes { get; set; }
}
