using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Web.Features.Bookings;

/// <summary>A slot as it is answered; what it names is what a booking sends.</summary>
/// <param name="StartsAt">When the work starts.</param>
public sealed record SlotAnswer(
    Instant StartsAt,
    Instant ArrivesAt,
    Instant ReadyAt,
    Guid BayId,
    string Bay,
    Guid TechnicianId,
    string Technician,
    IReadOnlyList<string> SpecialTools,
    string? SoaksIn,
    IReadOnlyList<PlannedPhaseAnswer> Phases)
{
    internal static SlotAnswer Of(Slot slot) => new(
        slot.Plan.WorkStartsAt,
        slot.Plan.ArrivesAt,
        slot.Plan.ReadyAt,
        slot.Bay.Id,
        slot.Bay.Name,
        slot.Technician.Id,
        slot.Technician.Name,
        [.. slot.Tools.Select(t => t.Name)],
        slot.SoaksIn?.Name,
        PlannedPhaseAnswer.Of(slot.Plan));
}

/// <summary>One phase of a plan.</summary>
public sealed record PlannedPhaseAnswer(VisitPhase Phase, Instant From, Instant Until)
{
    internal static IReadOnlyList<PlannedPhaseAnswer> Of(VisitPlan plan) =>
        [.. plan.Phases.Select(p => new PlannedPhaseAnswer(p.Phase, p.Span.Start, p.Span.End))];
}
