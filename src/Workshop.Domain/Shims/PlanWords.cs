using Workshop.Domain.EngineModels;
using Workshop.Domain.Kits;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Shims;

/// <summary>Says for each valve what the plan does with it, why, and what else could be done.</summary>
internal sealed class PlanWords(
    PlanTask task, ShimRange range, PlanProblem problem, PlanFound found, IReadOnlyDictionary<ValveKey, PlanLock> locks)
{
    private readonly PlanAlternatives alternatives = new(problem, found, task.Options.SetAll);
    private readonly IReadOnlyList<ShimLot?> lots = PlanLots.Of(problem, found.Solution, locks);

    /// <summary>How the present clearances are taken, for all valves at once.</summary>
    public static string Basis(IReadOnlyList<PlanValve> valves)
    {
        var lobes = valves.SelectMany(v => v.Lobes).Where(l => l.LevelMm is not null).ToList();
        return lobes.Count > 0 && lobes.All(l => l.FromHistory) ? "The present clearance is taken from each valve's history."
            : lobes.Any(l => l.FromHistory) ? "The present clearance is taken from the valve's history; where there is none, as the middle of its bracket."
            : "The present clearance is taken as the middle of its bracket.";
    }

    /// <summary>What is to be done where no shim can be chosen; nothing where one can.</summary>
    public static ValvePlan? WithoutAShim(PlanValve valve, EngineSpecification specification, bool setAll)
    {
        if (valve.LobesNotMeasured is { Count: > 0 } missing)
        {
            return Advise(valve, ShimAdvice.MeasureClearance, $"Not measured: {string.Join(", ", missing.Select(l => l.Spoken))}.");
        }

        if (valve.ChangedSince)
        {
            return Advise(valve, ShimAdvice.MeasureAsLeft, "Changed since it was measured: measure it as left.");
        }

        var wanted = valve.IsOut || setAll || valve.IsLikelyToLeave || valve.Empty;
        if (specification.ValveTrain == ValveTrainKind.ScrewAndLocknut || specification.Shims is not { } range)
        {
            return wanted
                ? Advise(valve, ShimAdvice.SetScrew, $"No shims: set the screw to {SetTo(valve)}, tighten {Locknut(specification)}, measure as left.")
                : LeftAlone(valve, setAll);
        }

        if (valve.LobeWithoutLevel is { } open)
        {
            return wanted
                ? Advise(valve, ShimAdvice.MeasureClearance, open.Found.Kind == Clearances.BracketKind.NoneEnters
                    ? "No blade enters, so how far it is below is not known: try a thinner blade, or fit a measured thinner shim and measure again."
                    : "How wide it is is not known: try thicker blades until one does not enter.")
                : LeftAlone(valve, setAll);
        }

        if (valve.Shim is not { } old)
        {
            return wanted
                ? Advise(valve, ShimAdvice.MeasureShim, "Its shim is not known: take it out and measure it, then its new thickness can be computed.")
                : LeftAlone(valve, setAll);
        }

        var (thinnest, thickest) = valve.WindowMm(old);
        var ideal = valve.IdealMm(old);
        return valve.IsOut && thinnest > thickest
            ? Advise(valve, ShimAdvice.Inspect,
                "No one thickness brings both lobes inside their limits: followers and lobes need inspection.") with { IdealMm = ideal }
            : valve.IsOut && IsBeyond(thinnest, thickest, range)
            ? Advise(valve, ShimAdvice.Inspect,
                $"{ideal:0.000} mm would be needed, but {range.Smallest.Millimetres:0.00#} to {range.Largest} is permitted. {ShimPlanner.DoNotGrind}")
                with { IdealMm = ideal, BeyondPermitted = true }
            : null;
    }

    /// <summary>No permitted thickness brings it inside.</summary>
    public static bool IsBeyond(decimal thinnest, decimal thickest, ShimRange range) =>
        thickest < range.Smallest.Millimetres || thinnest > range.Largest.Millimetres;

    /// <summary>A valve that has a shim to plan with.</summary>
    public ValvePlan Of(PlanValve valve)
    {
        var index = problem.Valves.ToList().IndexOf(valve);
        var (choice, old) = (found.Solution.Choices[index], valve.Shim!.Value);
        var plan = choice.Column >= problem.Columns.Count ? GaveItsShimAway(valve, old)
            : choice.Stays ? Stays(valve, old)
            : Changes(valve, old, choice, lots[index]!);
        return plan with
        {
            IdealMm = valve.IdealMm(old),
            Locked = locks.ContainsKey(valve.Key),
            Offered = choice.Stays && valve.IsNear && found.Open[index] && valve.Shafts.Count > 0,
            Alternatives = choice.Stays && !found.Open[index] ? [] : alternatives.Of(index, lots),
        };
    }

    private ValvePlan Changes(PlanValve valve, ShimThickness old, PlanChoice choice, ShimLot lot)
    {
        var from = lot.Source switch
        {
            LotSource.Box => lot.Condition == StockCondition.Used ? $"a used one from the box ({lot.Place})" : $"from the box ({lot.Place})",
            LotSource.Bench => $"({lot.Place})",
            _ => $"from {lot.Place}",
        };
        var lobes = valve.With(old, lot.Thickness.Millimetres);
        var gives = string.Join(" and ", lobes.Select(l => $"{l.PredictedMm:0.000} mm"));
        var why = choice.Outside > 0
            ? $"Chosen by hand; it leaves the valve outside its limits: about {gives}."
            : $"{Ideal(valve, old)}; {lot.Thickness} {from} gives about {gives}.{Beside(valve, choice)}{Reason(valve)}{BeyondIdeal(valve, old)}";
        return Advise(valve, ShimAdvice.FitShim, why) with { Shim = lot, Lobes = lobes };
    }

    private ValvePlan Stays(PlanValve valve, ShimThickness old)
    {
        if (valve.IsOut && !locks.ContainsKey(valve.Key))
        {
            return ToOrder(valve, old);
        }

        if (valve.IsOut)
        {
            return Advise(valve, ShimAdvice.Keep, "Left as it is by hand, outside its limits.");
        }

        if (task.Options.SetAll)
        {
            return Advise(valve, ShimAdvice.Keep, "Inside the limits, and no shim that the others can spare brings it nearer to its aim.");
        }

        var alone = LeftAlone(valve, setAll: false);
        var likely = valve.IsLikelyToLeave ? " It is likely to leave its limits before the next check, and no shim to be had changes that." : "";
        var near = valve.IsNear ? " Near a limit by the guard band." : "";
        return alone with { Why = alone.Why + likely + near };
    }

    private ValvePlan ToOrder(PlanValve valve, ShimThickness old)
    {
        var ideal = valve.IdealMm(old);
        var order = valve.ToOrder(old, range);
        var nearest = alternatives.Nearest(valve);
        var instead = nearest is null ? "" : $" The nearest to be had is {nearest.Shim!.Thickness}: it would leave it at about {string.Join(" and ", nearest.PredictedMm.Select(p => $"{p:0.000} mm"))}, outside.";
        return valve.IsInsideLimits(old, order.Millimetres)
            ? Advise(valve, ShimAdvice.OrderShim,
                $"No shim to be had brings it inside the limits: order {order}; {Ideal(valve, old)}.{instead}{BeyondIdeal(valve, old)}")
                with { Order = order, Nearest = nearest, Lobes = valve.With(old, order.Millimetres) }
            : Advise(valve, ShimAdvice.Inspect,
                $"{ideal:0.000} mm would be needed; neither the box nor the series in steps of {range.StepMm:0.###} mm has a thickness "
                + $"that brings it inside the limits. {ShimPlanner.DoNotGrind}") with { Nearest = nearest };
    }

    private ValvePlan GaveItsShimAway(PlanValve valve, ShimThickness old)
    {
        var order = valve.ToOrder(old, range);
        return Advise(valve, ShimAdvice.OrderShim,
            $"Its shim {(valve.Empty ? "is out" : "goes to another valve by hand")}, and none to be had replaces it: order {order}; {Ideal(valve, old)}.")
            with { Order = order, Lobes = valve.With(old, order.Millimetres) };
    }

    /// <summary>Why it does not get the shim that is nearest for it alone.</summary>
    private string Beside(PlanValve valve, PlanChoice choice)
    {
        var index = problem.Valves.ToList().IndexOf(valve);
        var nearer = problem.ChoicesOf(index).Where(c => c.Column < problem.Columns.Count && !c.Stays && c.Distance < choice.Distance)
            .OrderBy(c => c.Distance).ThenBy(c => c.Column).Select(c => (PlanChoice?)c).FirstOrDefault();
        if (locks.ContainsKey(valve.Key) || nearer is not { } other)
        {
            return locks.ContainsKey(valve.Key) ? " Chosen by hand." : "";
        }

        var column = problem.Columns[other.Column];
        var taker = Enumerable.Range(0, problem.Valves.Count).FirstOrDefault(
            v => v != index && found.Solution.Choices[v].Column == other.Column && column.Count == 1, -1);
        return taker >= 0 && found.Solution.Choices[taker].Stays ? $" {column.Thickness} would be nearer, but stays in {problem.Valves[taker].Key.Spoken}."
            : taker >= 0 ? $" {column.Thickness} would be nearer, but goes to {problem.Valves[taker].Key.Spoken}."
            : column.Source == LotSource.Box && choice.FromBox == 0 ? $" {column.Thickness} of the box would be nearer; this one takes nothing from it."
            : $" {column.Thickness} would be nearer, but the plan as a whole is better so.";
    }

    private static string Reason(PlanValve valve) =>
        valve.IsOut ? ""
        : valve.Empty ? " Its own shim is out."
        : valve.IsLikelyToLeave ? " Within its limits, but likely to leave them before the next check."
        : valve.IsNear ? " Near a limit, and a shim costs no access."
        : " It is within its limits; it is changed for the plan as a whole.";

    private string BeyondIdeal(PlanValve valve, ShimThickness old) =>
        valve.IdealMm(old) is var ideal && (ideal < range.Smallest.Millimetres || ideal > range.Largest.Millimetres)
            ? $" The ideal lies beyond the permitted thickness; this is the last that a shim can do. {ShimPlanner.DoNotGrind}"
            : "";

    private static string Ideal(PlanValve valve, ShimThickness old) =>
        $"{valve.IdealMm(old):0.000} mm is ideal, {(valve.Lobes.All(l => l.FromHistory) ? "from its history"
            : valve.Lobes.Count == 1 ? "from the middle of the bracket" : "from the middles of both lobes' brackets")}";

    private static ValvePlan LeftAlone(PlanValve valve, bool setAll) => valve.Undecided is { } open && !setAll
        ? Advise(valve, ShimAdvice.TryBlade, Sentence(open.Sentence))
        : Advise(valve, ShimAdvice.Keep, Sentence(string.Join("; ", valve.Lobes.Select(l => l.Verdict.Sentence).Distinct())));

    /// <summary>What an adjustment of screws opens beyond the check is the locknuts; with the torque that the maker states.</summary>
    private static string Locknut(EngineSpecification specification)
    {
        var nuts = Opened.BeyondTheCheck(
            specification, specification.ServiceItems.Where(i => i.Kind == ServiceItemKind.ValveClearanceAdjustment));
        return nuts.Count == 0 ? "the locknut" : string.Join(", ", nuts.Select(n => $"the {n.Name.ToLowerInvariant()} to {n.Torque}"));
    }

    private static string SetTo(PlanValve valve) =>
        string.Join(" and ", valve.Lobes.Select(l => Clearance.FromMillimetres(l.AimMm).ToString()).Distinct());

    private static ValvePlan Advise(PlanValve valve, ShimAdvice advice, string why) => new(valve.Key, advice, why, valve.Lobes) { Old = valve.Shim };

    private static string Sentence(string words) => $"{char.ToUpperInvariant(words[0])}{words[1..]}.";
}
