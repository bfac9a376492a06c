using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// What could be done for a visit that others push: another bay or technician at the same time, or a later start. A proposal counts
/// only when, by the same reckoning that found the visit pushed, nobody waits for anybody because of it any more. Nothing is moved.
/// </summary>
internal static class LateProposals
{
    private const int MostAtSameTime = 2;
    private const int MostLater = 2;
    private const int LaterTried = 6;

    public sealed record Proposed(Slot Slot, bool SameTime);

    public static async Task<IReadOnlyList<Proposed>> For(
        WorkshopDbContext db, OpeningCalendar calendar, VisitsToday today, LateAndPushed before, int number, Instant now, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, number, ct)).TryGet(out var open, out _)
            || await PlannedVisit.RefuseMove(db, open, ct) is not null
            || await PlannedVisit.Place(db, number, ct) is not { } place)
        {
            return [];
        }

        var visit = await VisitCase.OfCard(db, open, ct);
        var terms = visit.Terms(now, here: await PlannedVisit.Here(db, open, ct)) with { PartsFrom = place.StartsAt };
        var floor = await VisitCase.ReadAll(db, calendar, now, Instant.Max(now, place.StartsAt), [number], ct);
        var planner = new PhasePlanner(floor, visit.Shape, visit.Needs, terms);
        var resources = floor.Resources.ToDictionary(r => r.Resource.Id, r => r.Resource);
        var same = AtSameTime(planner, visit.Wishes, place.StartsAt, open.CheckIn is null ? open.Card.StartsAt : null)
            .Where(plan => Helps(today, before, number, plan, now)).Take(MostAtSameTime)
            .Select(plan => new Proposed(SlotSearch.Describe(plan, resources), true)).ToList();
        var later = floor.Of(ResourceKind.Bay).Where(b => visit.Wishes.BayId is null || b.Resource.Id == visit.Wishes.BayId)
            .SelectMany(b => SlotSearch.Find(
                planner, new SlotQuery(LaterTried, SlotSearch.UsualApartMinutes, b.Resource.Id, visit.Wishes.TechnicianId)).Slots)
            .Where(s => s.Plan.WorkStartsAt > place.StartsAt)
            .OrderBy(s => s.Plan.ReadyAt).ThenBy(s => s.Bay.Name, StringComparer.Ordinal)
            .Where(s => Helps(today, before, number, s.Plan, now)).DistinctBy(s => s.Bay.Id).Take(MostLater)
            .Select(s => new Proposed(s, false));
        return [.. same.Concat(later)];
    }

    private static IEnumerable<VisitPlan> AtSameTime(PhasePlanner planner, VisitWishes wishes, Instant start, Instant? arrives) =>
        from technician in planner.Floor.Of(ResourceKind.Technician)
        where (wishes.TechnicianId is null || technician.Resource.Id == wishes.TechnicianId)
            && planner.Needs.TechnicianLacks(technician.Resource).Count == 0
        from bay in planner.Floor.Of(ResourceKind.Bay)
        where (wishes.BayId is null || bay.Resource.Id == wishes.BayId) && planner.Needs.BayLacks(bay.Resource).Count == 0
        let plan = planner.Plan(bay, technician, start, arrives).Plan ?? planner.Plan(bay, technician, start).Plan
        where plan is not null
        select plan;

    /// <summary>With that plan the visit waits for nobody, and nobody is pushed who was not before.</summary>
    private static bool Helps(VisitsToday today, LateAndPushed before, int number, VisitPlan plan, Instant now)
    {
        var after = today.Reckon(
            now, [.. today.Visits.Select(v => v.Number == number ? v with { Planned = plan.Phases, Takes = plan.Takes } : v)]);
        var pushed = before.Pushed.Select(p => p.Number).ToHashSet();
        return after.Pushed.All(p => p.Number != number && pushed.Contains(p.Number));
    }
}
