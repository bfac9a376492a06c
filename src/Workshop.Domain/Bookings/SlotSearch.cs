using NodaTime;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Bookings;

/// <summary>A way to carry a visit out that nobody has taken yet.</summary>
/// <param name="Tools">One for each special tool that it needs; one may serve two needs.</param>
/// <param name="SoaksIn">A parking place, or the bay itself where every place is taken; absent where nothing soaks.</param>
public sealed record Slot(VisitPlan Plan, Resource Bay, Resource Technician, IReadOnlyList<Resource> Tools, Resource? SoaksIn);

/// <summary>What to look for.</summary>
/// <param name="Count">How many slots.</param>
/// <param name="ApartMinutes">Between the start of the work of one slot and that of the next, at least.</param>
/// <param name="BayId">This bay only: a wish is kept, not weighed.</param>
/// <param name="TechnicianId">This technician only.</param>
/// <param name="Explain">Say why it cannot be earlier.</param>
public sealed record SlotQuery(int Count, int ApartMinutes, Guid? BayId = null, Guid? TechnicianId = null, bool Explain = false);

/// <summary>What was found, earliest first, and why nothing fits before the first of it.</summary>
public sealed record SlotsFound(IReadOnlyList<Slot> Slots, IReadOnlyList<string> WhyNotEarlier);

/// <summary>
/// Finds the earliest moments at which everything fits. From one moment that does not fit it goes to the first later one at
/// which what stood in the way no longer does, so that it tries as many moments as there are things in the way, not every minute.
/// </summary>
public static class SlotSearch
{
    /// <summary>Starts that are found lie on whole multiples of it, counted from midnight.</summary>
    public const int GridMinutes = 5;

    /// <summary>How far ahead it looks.</summary>
    public const int HorizonDays = 90;

    public const int UsualApartMinutes = 60;

    /// <summary>
    /// The earliest start of the work that fits with any bay and technician, then the earliest that is at least the asked for
    /// time later, and so on. Where several fit the same start: ready soonest, then the bay that can do least beside, then the
    /// technician who can, then by name.
    /// </summary>
    public static SlotsFound Find(PhasePlanner planner, SlotQuery query)
    {
        ArgumentNullException.ThrowIfNull(planner);
        ArgumentNullException.ThrowIfNull(query);
        var bays = Fit(planner, ResourceKind.Bay, query.BayId, planner.Needs.BayLacks);
        var technicians = Fit(planner, ResourceKind.Technician, query.TechnicianId, planner.Needs.TechnicianLacks);
        if (bays.Count == 0 || technicians.Count == 0 || planner.MissingTools.Count > 0)
        {
            return new SlotsFound([], ObstacleWords.Unfit(planner, query));
        }

        var why = query.Explain ? new List<Bar>() : null;
        var slots = new List<Slot>();
        var hold = planner.WorkNotBefore();
        var begin = Math.Max(Spans.Ticks(planner.Terms.Now), Spans.Ticks(planner.Terms.NotBefore ?? planner.Terms.Now));
        var from = ArrivalSearch.Up(Math.Max(begin, hold.Until));
        if (hold.Until > begin)
        {
            why?.Add(hold);
        }

        var until = Math.Min(from + (HorizonDays * NodaConstants.TicksPerDay), Spans.Ticks(planner.Floor.Window.End));
        var next = technicians.Select(_ => from).ToArray();
        while (slots.Count < query.Count && next.Min() is var start && start < until)
        {
            var found = TryAll(planner, technicians, bays, next, start, slots.Count == 0 ? why : null);
            if (found.Count == 0)
            {
                continue;
            }

            slots.Add(Best(planner.Floor, found));
            var later = ArrivalSearch.Up(start + (Math.Max(GridMinutes, query.ApartMinutes) * NodaConstants.TicksPerMinute));
            for (var i = 0; i < next.Length; i++)
            {
                next[i] = Math.Max(next[i], later);
            }
        }

        return new SlotsFound(slots, why is null ? [] : ObstacleWords.WhyNotEarlier(planner, why, slots.Count > 0 ? slots[0].Plan : null));
    }

    private static List<VisitPlan> TryAll(
        PhasePlanner planner, List<ResourceTimeline> technicians, List<ResourceTimeline> bays, long[] next, long start, List<Bar>? why)
    {
        var found = new List<VisitPlan>();
        var fits = new List<VisitPlan>();
        for (var i = 0; i < technicians.Count; i++)
        {
            if (next[i] != start)
            {
                continue;
            }

            fits.Clear();
            var later = planner.Try(technicians[i], bays, start, fits, why);
            found.AddRange(fits);
            if (fits.Count == 0)
            {
                next[i] = later == Spans.Never ? Spans.Never : Math.Max(ArrivalSearch.Up(later), start + ArrivalSearch.Grid);
            }
        }

        return found;
    }

    private static List<ResourceTimeline> Fit(
        PhasePlanner planner, ResourceKind kind, Guid? only, Func<Resource, IReadOnlyList<string>> lacks) =>
        planner.Floor.Of(kind).Where(r => (only is null || r.Resource.Id == only) && lacks(r.Resource).Count == 0).ToList();

    private static Slot Best(WorkshopFloor floor, List<VisitPlan> plans)
    {
        var byId = floor.Resources.ToDictionary(r => r.Resource.Id, r => r.Resource);
        return plans.Select(plan => Describe(plan, byId))
            .OrderBy(s => s.Plan.ReadyAt)
            .ThenBy(s => s.Bay.Capabilities.Count)
            .ThenBy(s => s.Technician.Grade ?? TechnicianGrade.Master)
            .ThenBy(s => s.Technician.Capabilities.Count)
            .ThenBy(s => s.Bay.Name, StringComparer.Ordinal)
            .ThenBy(s => s.Technician.Name, StringComparer.Ordinal)
            .First();
    }

    /// <summary>Who and what a plan takes.</summary>
    public static Slot Describe(VisitPlan plan, IReadOnlyDictionary<Guid, Resource> byId)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var work = plan.Takes.Where(t => t.Phase == VisitPhase.Work).Select(t => byId[t.ResourceId]).Distinct().ToList();
        return new Slot(
            plan,
            work.Single(r => r.Kind == ResourceKind.Bay),
            work.Single(r => r.Kind == ResourceKind.Technician),
            [.. work.Where(r => r.Kind == ResourceKind.SpecialTool)],
            plan.Takes.Where(t => t.Phase == VisitPhase.ColdSoak).Select(t => byId[t.ResourceId]).FirstOrDefault());
    }
}
