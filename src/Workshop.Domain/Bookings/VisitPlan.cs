using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>A resource taken for a span by one phase of a visit.</summary>
/// <param name="Span">Half open; the work of a technician has a span for each stretch between breaks and nights.</param>
public sealed record Take(VisitPhase Phase, Guid ResourceId, Interval Span);

/// <summary>From the first to the last minute of a phase.</summary>
public sealed record PhaseSpan(VisitPhase Phase, Interval Span);

/// <summary>One way to carry a visit out: its phases in order of time, and what each takes of whom.</summary>
/// <param name="Phases">In order; each begins where the one before ends, or later where nobody is there to go on.</param>
/// <param name="Takes">Bay, technician, special tools and parking place.</param>
public sealed record VisitPlan(IReadOnlyList<PhaseSpan> Phases, IReadOnlyList<Take> Takes)
{
    /// <summary>When the motorcycle arrives.</summary>
    public Instant ArrivesAt => Phases[0].Span.Start;

    /// <summary>When it is handed over.</summary>
    public Instant ReadyAt => Phases[^1].Span.End;

    /// <summary>When the work begins.</summary>
    public Instant WorkStartsAt => Phases.Single(p => p.Phase == VisitPhase.Work).Span.Start;
}
