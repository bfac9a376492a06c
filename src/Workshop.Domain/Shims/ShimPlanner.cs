using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Shims;

/// <summary>
/// Which shim goes where, over the whole engine: the best plan there is, in this order. Fewest valves left outside their
/// limits; fewest more likely than the threshold to leave them before the next check; fewest shafts taken out; fewest valves
/// changed, where one near a limit under a shaft that comes out anyway is free; fewest left near a limit; fewest shims from
/// the box; least sum of distances from the aims in whole 0.001 mm. Each shim once; only permitted thicknesses; a shim is
/// fitted only where it brings every lobe inside its limits, unless somebody locks it there by hand.
/// <para>
/// Exact: one minimum-cost assignment per set of shafts (<see cref="Statistics.MinimumCostAssignment"/>), its costs all aims
/// packed into whole numbers. Equal tasks get equal plans, whatever the order of valves and shims.
/// </para>
/// </summary>
public static class ShimPlanner
{
    /// <summary>Said wherever a need goes beyond the permitted thickness.</summary>
    public const string DoNotGrind = "Do not grind or stack shims; the valve, its seat or the retainer needs inspection.";

    /// <summary>The plan, with a word on every valve of the engine.</summary>
    /// <param name="task">Engine, readings, shims and what is asked.</param>
    /// <exception cref="OverflowException">An engine of so many valves that the packed aims exceed 64 bits; 64 valves never do.</exception>
    public static ShimPlan For(PlanTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        var measured = task.Measured.ToDictionary(m => m.Valve);
        var valves = task.Specification.Valves
            .Select(v => new PlanValve(task, v, measured.GetValueOrDefault(v.Key)))
            .OrderBy(v => v.Key).ToList();
        var settled = valves.Select(v => (Valve: v, Plan: PlanWords.WithoutAShim(v, task.Specification, task.Options.SetAll)))
            .Where(v => v.Plan is not null).ToDictionary(v => v.Valve.Key, v => v.Plan!);
        var plannable = valves.Where(v => !settled.ContainsKey(v.Key)).ToList();
        var outside = valves.Count(v => v.IsOut && settled.ContainsKey(v.Key));
        var aside = new List<ChoiceSetAside>();
        if (plannable.Count == 0 || task.Specification.Shims is not { } range)
        {
            aside.AddRange(task.Options.Locked.Keys.Order().Select(valve => new ChoiceSetAside(valve, PlanLocks.NotYet)));
            return new ShimPlan([.. valves.Select(v => settled[v.Key])], [],
                new PlanTotals(outside, 0, 0, 0, 0, 0, 0), PlanWords.Basis(valves), aside);
        }

        var columns = PlanColumns.Of(task, range, plannable);
        var locks = PlanLocks.Of(task, plannable, columns, aside);
        var problem = new PlanProblem(task, plannable, columns, locks, outside);
        var found = PlanSearch.Best(task, problem, locks);
        if (found is null)
        {
            aside.AddRange(locks.Keys.Order().Select(valve => new ChoiceSetAside(valve, "the choices made by hand contradict each other")));
            locks = new Dictionary<ValveKey, PlanLock>();
            problem = new PlanProblem(task, plannable, columns, locks, outside);
            found = PlanSearch.Best(task, problem, locks)!;
        }

        var words = new PlanWords(task, range, problem, found, locks);
        return new ShimPlan(
            [.. valves.Select(v => settled.GetValueOrDefault(v.Key) ?? words.Of(v))], found.Shafts, found.Totals, PlanWords.Basis(valves), aside);
    }
}

/// <summary>Which choices made by hand can be kept.</summary>
internal static class PlanLocks
{
    public const string NotYet = "no shim can be chosen for it yet";

    /// <summary>Each with its column and place; what cannot be kept is set aside, with the reason.</summary>
    public static IReadOnlyDictionary<ValveKey, PlanLock> Of(
        PlanTask task, IReadOnlyList<PlanValve> plannable, IReadOnlyList<PlanColumn> columns, List<ChoiceSetAside> aside)
    {
        var kept = new Dictionary<ValveKey, PlanLock>();
        foreach (var (valve, code) in task.Options.Locked.OrderBy(l => l.Key))
        {
            var name = code == ShimLot.Stay ? ShimLot.CodeIn(valve) : code;
            var column = Enumerable.Range(0, columns.Count).FirstOrDefault(c => columns[c].Lots.Any(l => l.Code == name), -1);
            var lot = column < 0 ? null : columns[column].Lots.First(l => l.Code == name);
            var why = plannable.All(v => v.Key != valve) ? NotYet
                : lot is null ? "that shim is not to be had any more"
                : kept.Values.Count(l => l.Lot.Code == name) >= lot.Count ? "that shim is chosen for another valve"
                : lot.Source == LotSource.Valve && lot.Valve != valve && !task.Options.MayMoveBetweenValves
                    ? "shims do not go from valve to valve by the workshop's rule"
                : lot.Source == LotSource.Valve && lot.Valve != valve && !IsPermitted(lot.Thickness, task.Specification.Shims!)
                    ? "its thickness is not permitted"
                : null;
            if (why is null)
            {
                kept.Add(valve, new PlanLock(column, lot!));
            }
            else
            {
                aside.Add(new ChoiceSetAside(valve, why));
            }
        }

        return kept;
    }

    private static bool IsPermitted(ShimThickness thickness, ShimRange range) =>
        thickness >= range.Smallest && thickness <= range.Largest;
}
