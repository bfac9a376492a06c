using NodaTime;
using Workshop.Domain.Statistics.Scheduling;

namespace Workshop.Domain.Bookings;

/// <summary>A visit of the week that may be moved: booked, and not before its owner can be told.</summary>
/// <param name="Number">Of its job card.</param>
/// <param name="Shape">How long its phases take.</param>
/// <param name="Needs">What it needs of bay and technician, and its special tools.</param>
/// <param name="Terms">What was agreed on; and not before which moment anything may be moved to.</param>
/// <param name="TechnicianId">Wished for; absent: anyone who is able.</param>
/// <param name="BayId">Wished for; absent: any that is fit.</param>
/// <param name="Today">Its plan as it stands.</param>
public sealed record ReplanVisit(
    int Number, VisitShape Shape, VisitNeeds Needs, PlanTerms Terms, Guid? TechnicianId, Guid? BayId, VisitPlan Today);

/// <summary>The visits of a week, and what is taken by everything else.</summary>
/// <param name="Week">From its first to its last moment: visits end within it, or where they end today.</param>
/// <param name="Floor">Hours, absences, and what other visits have taken; not what the visits to be moved have.</param>
/// <param name="Visits">Those that may be moved.</param>
public sealed record ReplanWeek(Interval Week, WorkshopFloor Floor, IReadOnlyList<ReplanVisit> Visits);

/// <summary>A visit before and after; the same plan where it does not move.</summary>
public sealed record ReplannedVisit(ReplanVisit Visit, VisitPlan Proposed)
{
    public bool Moves => !ReferenceEquals(Visit.Today, Proposed);
}

/// <summary>A technician's work in the week.</summary>
/// <param name="AvailableMinutes">Working hours less breaks and absences.</param>
/// <param name="TodayMinutes">Taken by visits as the plan stands.</param>
/// <param name="ProposedMinutes">Taken by visits as proposed.</param>
public sealed record ReplannedLoad(Resource Technician, int AvailableMinutes, int TodayMinutes, int ProposedMinutes);

/// <summary>What is proposed; nothing has moved yet.</summary>
/// <param name="Visits">All that may be moved, by the start of their work as proposed.</param>
/// <param name="EndsToday">When the last of these visits is handed over as the plan stands; absent where there is none.</param>
/// <param name="EndsProposed">The same as proposed.</param>
/// <param name="Loads">By technician.</param>
/// <param name="BrokenToday">Job cards whose plans break a rule as they stand, each with what is wrong.</param>
/// <param name="Proven">No plan ends earlier, and none that ends so early is more even with fewer moved.</param>
public sealed record ReplanProposal(
    IReadOnlyList<ReplannedVisit> Visits,
    Instant? EndsToday,
    Instant? EndsProposed,
    IReadOnlyList<ReplannedLoad> Loads,
    IReadOnlyList<int> BrokenToday,
    bool Proven)
{
    public IReadOnlyList<ReplannedVisit> Moved => [.. Visits.Where(v => v.Moves)];
}
