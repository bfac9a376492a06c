using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Shims;

/// <summary>
/// For each valve the shim that brings it back: the ideal thickness by <see cref="ShimArithmetic"/> from the middle of the
/// bracket, then the nearest in the box by the clearance that it will give.
/// <para>
/// Shims are handed out one valve after the other, the valve farthest from its aim first, each shim once. That is a good plan,
/// not always the best: it may take for one valve what another needed more, and it moves no shim from valve to valve.
/// </para>
/// </summary>
public static class ShimProposals
{
    /// <summary>Said wherever a need goes beyond the permitted thickness.</summary>
    public const string DoNotGrind = "Do not grind or stack shims; the valve, its seat or the retainer needs inspection.";

    /// <summary>A proposal for every valve of the engine, in order of valve.</summary>
    /// <param name="specification">Limits, set-to, lever ratios and the permitted thickness.</param>
    /// <param name="measured">What is known of the valves; one that is missing is not measured yet.</param>
    /// <param name="box">What may be taken: shims of the specification's own part.</param>
    /// <param name="all">Also the valves within their limits, where a shim from the box brings them nearer to their aim.</param>
    public static IReadOnlyList<ShimProposal> For(
        EngineSpecification specification, IEnumerable<MeasuredValve> measured, IEnumerable<BoxShim> box, bool all = false)
    {
        ArgumentNullException.ThrowIfNull(specification);
        var known = measured.ToDictionary(m => m.Valve);
        var valves = specification.Valves
            .Select(v => new ShimNeed(specification, v, known.GetValueOrDefault(v.Key)))
            .ToList();
        var left = new LeftInBox(box, specification.Shims);
        return [.. valves
            .OrderByDescending(v => v.IsOut).ThenByDescending(v => v.DistanceFromAim).ThenBy(v => v.Valve)
            .Select(v => Propose(v, specification, left, all))
            .OrderBy(p => p.Valve)];
    }

    private static ShimProposal Propose(ShimNeed need, EngineSpecification specification, LeftInBox box, bool all)
    {
        if (need.LobesNotMeasured is { Count: > 0 } missing)
        {
            return need.Advise(ShimAdvice.MeasureClearance, $"Not measured: {string.Join(", ", missing.Select(l => l.Spoken))}.");
        }

        if (need.ChangedSince)
        {
            return need.Advise(ShimAdvice.MeasureAsLeft, "Changed since it was measured: measure it as left.");
        }

        if (!need.IsOut && need.Undecided is { } open && !all)
        {
            return need.Advise(ShimAdvice.TryBlade, Sentence(open.Sentence));
        }

        if (!need.IsOut && !all)
        {
            return need.Advise(ShimAdvice.Keep, Sentence(string.Join("; ", need.Lobes.Select(l => l.Verdict.Sentence).Distinct())));
        }

        if (specification.ValveTrain == ValveTrainKind.ScrewAndLocknut || specification.Shims is not { } range)
        {
            return need.Advise(ShimAdvice.SetScrew,
                $"No shims: set the screw to {need.Lobes[0].Limits.SetTo}, tighten the locknut, measure as left.");
        }

        if (need.LobeWithoutMiddle is { } noMiddle)
        {
            return need.Advise(ShimAdvice.MeasureClearance, noMiddle.Found.Kind == BracketKind.NoneEnters
                ? "No blade enters, so how far it is below is not known: try a thinner blade, or fit a measured thinner shim and measure again."
                : "How wide it is is not known: try thicker blades until one does not enter.");
        }

        return need.Shim is { } old
            ? Compute(need, old, range, box)
            : need.Advise(ShimAdvice.MeasureShim, "Its shim is not known: take it out and measure it, then its new thickness can be computed.");
    }

    private static ShimProposal Compute(ShimNeed need, ShimThickness old, ShimRange range, LeftInBox box)
    {
        var ideal = need.IdealMm(old);
        var (thinnest, thickest) = need.WindowMm(old);
        if (thinnest > thickest)
        {
            return need.Advise(ShimAdvice.Inspect,
                "No one thickness brings both lobes inside their limits: followers and lobes need inspection.") with { IdealMm = ideal };
        }

        if (thickest < range.Smallest.Millimetres || thinnest > range.Largest.Millimetres)
        {
            return need.Advise(ShimAdvice.Inspect,
                $"{ideal:0.000} mm would be needed, but {range.Smallest.Millimetres:0.00#} to {range.Largest} is permitted. {DoNotGrind}")
                with { IdealMm = ideal };
        }

        var beyond = ideal < range.Smallest.Millimetres || ideal > range.Largest.Millimetres
            ? $" The ideal lies beyond the permitted thickness; this is the last that a shim can do. {DoNotGrind}"
            : "";
        var basis = need.Lobes.Count == 1 ? "from the middle of the bracket" : "from the middles of both lobes' brackets";
        if (box.Nearest(t => need.Score(old, t), t => need.IsInsideLimits(old, t)) is not { } nearest)
        {
            var order = need.ToOrder(old, range);
            return need.IsInsideLimits(old, order.Millimetres)
                ? need.Advise(ShimAdvice.OrderShim,
                    $"The box holds none that brings it inside the limits: order {order}; {ideal:0.000} mm is ideal, {basis}.{beyond}",
                    order) with { IdealMm = ideal }
                : need.Advise(ShimAdvice.Inspect,
                    $"{ideal:0.000} mm would be needed; neither the box nor the series in steps of {range.StepMm:0.###} mm has a thickness "
                    + $"that brings it inside the limits. {DoNotGrind}") with { IdealMm = ideal };
        }

        if (!need.IsOut && need.Score(old, nearest.Thickness.Millimetres) >= need.DistanceFromAim)
        {
            return need.Advise(ShimAdvice.Keep, "Inside the limits, and the box holds none that brings it nearer to its aim.") with { IdealMm = ideal };
        }

        box.Take(nearest);
        var used = nearest.Condition == StockCondition.Used ? ", used before" : "";
        return need.Advise(ShimAdvice.FitShim,
            $"{ideal:0.000} mm is ideal, {basis}; {nearest.Thickness}{used} is the nearest in the box.{beyond}", nearest.Thickness)
            with { IdealMm = ideal, Condition = nearest.Condition };
    }

    private static string Sentence(string words) => $"{char.ToUpperInvariant(words[0])}{words[1..]}.";

    /// <summary>What the box still holds while shims are handed out.</summary>
    private sealed class LeftInBox
    {
        private readonly Dictionary<(ShimThickness Thickness, StockCondition Condition), int> counts;

        public LeftInBox(IEnumerable<BoxShim> box, ShimRange? range) => counts = range is null
            ? []
            : box.Where(s => s.Thickness >= range.Smallest && s.Thickness <= range.Largest)
                .GroupBy(s => (s.Thickness, s.Condition))
                .ToDictionary(g => g.Key, g => g.Sum(s => s.Count));

        /// <summary>The best by score among those that suit. Equally good: the thinner, which leaves more clearance; then new before used.</summary>
        public BoxShim? Nearest(Func<decimal, decimal> score, Func<decimal, bool> suits) => counts
            .Where(c => c.Value > 0 && suits(c.Key.Thickness.Millimetres))
            .OrderBy(c => score(c.Key.Thickness.Millimetres)).ThenBy(c => c.Key.Thickness).ThenBy(c => c.Key.Condition)
            .Select(c => new BoxShim(c.Key.Thickness, c.Key.Condition, c.Value))
            .FirstOrDefault();

        public void Take(BoxShim shim) => counts[(shim.Thickness, shim.Condition)]--;
    }
}
