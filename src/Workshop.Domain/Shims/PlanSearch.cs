using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Shims;

/// <summary>The best set of shafts to take out, with the best assignment under it.</summary>
/// <param name="Shafts">To take out, beside those that lie on the bench already.</param>
/// <param name="Open">Per valve of the problem: nothing is in the way of its shim.</param>
internal sealed record PlanFound(IReadOnlyList<Camshaft> Shafts, IReadOnlyList<bool> Open, PlanSolution Solution, PlanTotals Totals);

/// <summary>
/// Tries sets of shafts, one assignment each, the small sets first. With everything out the aims that weigh more than the
/// shafts come out as good as they can; the first size of set that does as well holds the best plan. A set that leaves more
/// valves in need of a shim shut in than the best plan leaves so is passed over.
/// </summary>
internal static class PlanSearch
{
    public static PlanFound? Best(PlanTask task, PlanProblem problem, IReadOnlyDictionary<ValveKey, PlanLock> locks)
    {
        var setAll = task.Options.SetAll;
        var needed = problem.Valves.Where(v => locks.TryGetValue(v.Key, out var l) && l.Lot.Valve != v.Key)
            .SelectMany(v => v.Shafts).ToHashSet(StringComparer.Ordinal);
        var inTheWay = task.Specification.Camshafts
            .Where(c => !task.ShaftsOut.Contains(c.Code) && problem.Valves.Any(v => v.Shafts.Contains(c.Code)))
            .ToList();
        var must = inTheWay.Where(c => needed.Contains(c.Code)).ToList();
        var may = inTheWay.Except(must).ToList();

        if (Try(task, problem, inTheWay) is not { } all)
        {
            return null;
        }

        var heavy = setAll ? 4 : 2;
        var bound = all.Totals.InOrder(setAll).Take(heavy).ToList();
        for (var size = 0; size < may.Count; size++)
        {
            PlanFound? best = null;
            foreach (var set in SetsOf(may.Count, size))
            {
                List<Camshaft> shafts = [.. must, .. may.Where((_, i) => (set & (1L << i)) != 0)];
                if (ShutIn(task, problem, shafts, all.Totals)
                    || Try(task, problem, shafts) is not { } found
                    || !found.Totals.InOrder(setAll).Take(heavy).SequenceEqual(bound))
                {
                    continue;
                }

                if (best is null || found.Totals.CompareTo(best.Totals, setAll) < 0)
                {
                    best = found;
                }
            }

            if (best is not null)
            {
                return best;
            }
        }

        return all;
    }

    private static PlanFound? Try(PlanTask task, PlanProblem problem, List<Camshaft> shafts)
    {
        var open = OpenWith(task, problem, shafts);
        return problem.Solve(open) is { } solution
            ? new PlanFound([.. task.Specification.Camshafts.Where(shafts.Contains)], open, solution, solution.Totals(shafts.Count))
            : null;
    }

    private static bool ShutIn(PlanTask task, PlanProblem problem, List<Camshaft> shafts, PlanTotals best)
    {
        var shut = OpenWith(task, problem, shafts).Select((open, i) => (Valve: problem.Valves[i], open)).Where(v => !v.open).ToList();
        var outside = shut.Count(v => v.Valve.IsOut);
        return outside > best.Outside || (outside == best.Outside && shut.Count(v => v.Valve.IsLikelyToLeave) > best.Likely);
    }

    private static List<bool> OpenWith(PlanTask task, PlanProblem problem, List<Camshaft> shafts) =>
        [.. problem.Valves.Select(v => v.Empty || v.Shafts.All(s => task.ShaftsOut.Contains(s) || shafts.Any(c => c.Code == s)))];

    /// <summary>The sets of so many of so many, as bits, in rising order.</summary>
    private static List<long> SetsOf(int of, int size)
    {
        var sets = new List<long>();
        for (var set = (1L << size) - 1; set < 1L << of;)
        {
            sets.Add(set);
            if (set == 0)
            {
                break;
            }

            // The next number with as many bits: the lowest run moves up by one, what is left of it falls to the bottom.
            var lowest = set & -set;
            var moved = set + lowest;
            set = moved | (((set ^ moved) / lowest) >> 2);
        }

        return sets;
    }
}
