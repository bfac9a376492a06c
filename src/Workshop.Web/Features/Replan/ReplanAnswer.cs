using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.Replan;

/// <summary>What is proposed for a week.</summary>
/// <param name="MovableFrom">What arrives before stays where it is.</param>
/// <param name="EndsToday">When the last of the visits that may be moved is handed over, as the plan stands.</param>
/// <param name="Moves">What would differ; all or some of them can be sent back to be accepted.</param>
/// <param name="Stay">How many visits may be moved and are not.</param>
/// <param name="BrokenToday">Job cards whose plans keep to no rule as they stand: an absence that was entered over them.</param>
/// <param name="Proven">Nothing better exists; else the time was up.</param>
public sealed record ReplanAnswer(
    string Week,
    Instant MovableFrom,
    Instant? EndsToday,
    Instant? EndsProposed,
    IReadOnlyList<ReplanAnswer.Load> Loads,
    IReadOnlyList<ReplanAnswer.Move> Moves,
    int Stay,
    IReadOnlyList<int> BrokenToday,
    bool Proven)
{
    public sealed record Load(Guid TechnicianId, string Technician, int AvailableMinutes, int TodayMinutes, int ProposedMinutes);

    /// <param name="PlanRevision">Of the plan that it was made from.</param>
    public sealed record Move(int Number, int PlanRevision, string Registration, string Motorcycle, Place Today, Place Proposed);

    /// <param name="PlaceId">Where it soaks: a parking place or a bay.</param>
    public sealed record Place(
        Instant ArrivesAt,
        Instant WorkStartsAt,
        Instant ReadyAt,
        Guid BayId,
        string Bay,
        Guid TechnicianId,
        string Technician,
        Guid? PlaceId,
        IReadOnlyList<Guid> ToolIds,
        IReadOnlyList<PlannedPhaseAnswer> Phases);

    internal static ReplanAnswer Of(IsoWeek week, ReplanCase read, ReplanProposal proposal) => new(
        week.ToString(),
        read.MovableFrom,
        proposal.EndsToday,
        proposal.EndsProposed,
        [.. proposal.Loads.OrderBy(l => l.Technician.Name, StringComparer.Ordinal)
            .Select(l => new Load(l.Technician.Id, l.Technician.Name, l.AvailableMinutes, l.TodayMinutes, l.ProposedMinutes))],
        [.. proposal.Moved.Select(m => new Move(
            m.Visit.Number,
            read.Cards[m.Visit.Number].Row.PlanRevision,
            read.Cards[m.Visit.Number].Registration,
            read.Cards[m.Visit.Number].Motorcycle,
            PlaceOf(read, m.Visit.Today),
            PlaceOf(read, m.Proposed)))],
        proposal.Visits.Count - proposal.Moved.Count,
        proposal.BrokenToday,
        proposal.Proven);

    private static Place PlaceOf(ReplanCase read, VisitPlan plan)
    {
        var resources = read.Week.Floor.Resources.ToDictionary(r => r.Resource.Id, r => r.Resource);
        var work = plan.Takes.Where(t => t.Phase == VisitPhase.Work && resources.ContainsKey(t.ResourceId)).Select(t => resources[t.ResourceId]).Distinct().ToList();
        var (bay, technician) = (work.Find(r => r.Kind == ResourceKind.Bay), work.Find(r => r.Kind == ResourceKind.Technician));
        return new Place(
            plan.ArrivesAt, plan.WorkStartsAt, plan.ReadyAt,
            bay?.Id ?? Guid.Empty, bay?.Name ?? "retired", technician?.Id ?? Guid.Empty, technician?.Name ?? "retired",
            plan.Takes.FirstOrDefault(t => t.Phase == VisitPhase.ColdSoak)?.ResourceId,
            [.. work.Where(r => r.Kind == ResourceKind.SpecialTool).Select(r => r.Id)],
            PlannedPhaseAnswer.Of(plan));
    }
}
