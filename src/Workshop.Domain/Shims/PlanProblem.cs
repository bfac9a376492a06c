using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Shims;

/// <summary>One valve served in one way, with its share of every aim.</summary>
/// <param name="Column">Of the shims; or beyond them, one for each valve, "to be ordered".</param>
/// <param name="Tie">Among equals: the looser side, then a new shim before a used one.</param>
internal readonly record struct PlanChoice(
    int Column, bool Stays, int Outside, int Likely, int Changed, int NearLimit, int FromBox, long Distance, int Tie)
{
    /// <summary>The weightiest first; the order of <see cref="PlanTotals"/> without the shafts, which a choice does not decide.</summary>
    public long[] InOrder(bool setAll) => setAll
        ? [Outside, Likely, NearLimit, Distance, Changed, FromBox, Tie]
        : [Outside, Likely, Changed, NearLimit, FromBox, Distance, Tie];
}

/// <summary>A way to serve all valves: the choice of each, in the order of the problem's valves.</summary>
/// <param name="OutsideBeside">Valves outside their limits that are no part of the problem.</param>
internal sealed record PlanSolution(IReadOnlyList<PlanChoice> Choices, int OutsideBeside)
{
    public PlanTotals Totals(int shafts) => new(
        OutsideBeside + Choices.Sum(c => Math.Min(c.Outside, 1)), Choices.Sum(c => c.Likely), shafts, Choices.Sum(c => c.Changed),
        Choices.Sum(c => c.NearLimit), Choices.Sum(c => c.FromBox), Choices.Sum(c => c.Distance));
}

/// <summary>
/// The assignment of shims to valves, with every aim packed into one whole number per choice: each aim weighs more than all
/// lesser ones together can sum to, so the cheapest assignment is the best in the order of the aims. The weights come from
/// the ranges that the choices at hand span, which keeps them far inside 64 bits: with 32 valves a choice costs below 1e16.
/// </summary>
internal sealed class PlanProblem
{
    private readonly List<List<(PlanChoice Choice, long Cost)>> rows;
    private readonly int outsideBeside;

    /// <summary>Per column the valve that its shim lies in, -1 for those of the box and the bench.</summary>
    private readonly int[] inValve;

    public PlanProblem(
        PlanTask task, IReadOnlyList<PlanValve> valves, IReadOnlyList<PlanColumn> columns, IReadOnlyDictionary<ValveKey, PlanLock> locks,
        int outsideBeside)
    {
        (Valves, Columns, this.outsideBeside) = (valves, columns, outsideBeside);
        var own = columns.Select((column, index) => (column, index)).Where(c => c.column.Source == LotSource.Valve)
            .ToDictionary(c => c.column.Valve!.Value, c => c.index);
        inValve = [.. columns.Select(c => c.Source == LotSource.Valve ? valves.ToList().FindIndex(v => v.Key == c.Valve) : -1)];
        var taken = locks.Values.Select(l => l.Column).ToHashSet();
        rows = Weigh(
            [.. valves.Select((valve, row) => ChoicesOf(
                task, valve, own.GetValueOrDefault(valve.Key, -1), columns, locks.GetValueOrDefault(valve.Key), columns.Count + row,
                mayLoseItsOwn: valve.Empty || taken.Contains(own[valve.Key])))],
            task.Options.SetAll);
    }

    public IReadOnlyList<PlanValve> Valves { get; }

    public IReadOnlyList<PlanColumn> Columns { get; }

    /// <summary>What a valve may choose, the best for it alone first.</summary>
    public IEnumerable<PlanChoice> ChoicesOf(int valve) => rows[valve].Select(c => c.Choice);

    /// <summary>The best where only these valves may be changed; nothing where locks contradict each other.</summary>
    /// <param name="open">Per valve: nothing is in the way of its shim.</param>
    /// <param name="forced">A valve that must take this column.</param>
    public PlanSolution? Solve(IReadOnlyList<bool> open, (int Valve, int Column)? forced = null)
    {
        var listed = Enumerable.Range(0, Valves.Count).Where(v => open[v]).ToList();
        var columns = new Dictionary<int, int>();
        var (capacities, arcs, meant) = (new List<int>(), new List<AssignmentChoice>(), new Dictionary<(int Row, int Column), PlanChoice>());
        for (var row = 0; row < listed.Count; row++)
        {
            // A valve needs no more choices than there are valves: of so many the others leave it at least one.
            var valve = listed[row];
            var left = listed.Count;
            foreach (var (choice, cost) in rows[valve])
            {
                var isForced = forced is { } f && f.Valve == valve;
                if ((isForced && choice.Column != forced!.Value.Column) || (choice.Column < inValve.Length && inValve[choice.Column] >= 0 && !open[inValve[choice.Column]]))
                {
                    continue;
                }

                if (left-- == 0)
                {
                    break;
                }

                if (!columns.TryGetValue(choice.Column, out var column))
                {
                    columns[choice.Column] = column = capacities.Count;
                    capacities.Add(choice.Column < Columns.Count ? Columns[choice.Column].Count : 1);
                }

                arcs.Add(new AssignmentChoice(row, column, cost));
                meant[(row, column)] = choice;
            }
        }

        if (MinimumCostAssignment.Solve(listed.Count, capacities, arcs) is not { } best)
        {
            return null;
        }

        var chosen = Enumerable.Range(0, Valves.Count).Select(StayOf).ToArray();
        for (var row = 0; row < listed.Count; row++)
        {
            chosen[listed[row]] = meant[(row, best.ColumnOfRow[row])];
        }

        return new PlanSolution(chosen, outsideBeside);
    }

    /// <summary>The valve left as it is; of one that is locked to another shim, which is never shut, its lock.</summary>
    private PlanChoice StayOf(int valve) => rows[valve].Select(c => c.Choice).FirstOrDefault(c => c.Stays, rows[valve][0].Choice);

    private static List<PlanChoice> ChoicesOf(
        PlanTask task, PlanValve valve, int own, IReadOnlyList<PlanColumn> columns, PlanLock? locked, int toOrder, bool mayLoseItsOwn)
    {
        var choices = new List<PlanChoice>();
        if (!valve.Empty && (locked is null || locked.Column == own))
        {
            choices.Add(new PlanChoice(
                own, true, valve.IsOut ? 1 : 0, valve.IsLikelyToLeave ? 1 : 0, 0, valve.IsNear ? 1 : 0, 0, valve.DistanceNow, 0));
        }

        if (locked is not null)
        {
            if (locked.Column != own)
            {
                choices.Add(Change(task, valve, locked.Column, columns[locked.Column]));
            }

            return choices;
        }

        var (thinnest, thickest) = valve.WindowMm(valve.Shim!.Value);
        var range = task.Specification.Shims!;
        for (var column = 0; column < columns.Count; column++)
        {
            var shim = columns[column];
            var thickness = shim.Thickness.Millimetres;
            if (column != own && thickness >= thinnest && thickness <= thickest
                && shim.Thickness >= range.Smallest && shim.Thickness <= range.Largest
                && (shim.Source != LotSource.Valve || task.Options.MayMoveBetweenValves))
            {
                choices.Add(Change(task, valve, column, shim));
            }
        }

        if (mayLoseItsOwn)
        {
            // Its shim is out, or was given away by hand. Dearer than leaving any valve outside, so never chosen freely.
            choices.Add(new PlanChoice(toOrder, false, 2, 0, 1, 0, 0, 0, 0));
        }

        return choices;
    }

    private static PlanChoice Change(PlanTask task, PlanValve valve, int column, PlanColumn shim)
    {
        var old = valve.Shim!.Value;
        var lobes = valve.With(old, shim.Thickness.Millimetres);
        var freely = valve.IsNear && valve.Shafts.Count > 0;
        var tight = lobes.Any(l => l.PredictedMm < l.AimMm);
        return new PlanChoice(
            column,
            Stays: false,
            Outside: valve.IsInsideLimits(old, shim.Thickness.Millimetres) ? 0 : 1,
            Likely: lobes.Any(l => l.LeavesThen > task.Options.Threshold) ? 1 : 0,
            Changed: freely ? 0 : 1,
            NearLimit: lobes.Any(l => l.NearLimit) ? 1 : 0,
            FromBox: shim.Source == LotSource.Box ? 1 : 0,
            Distance: valve.DistanceMicrometres(old, shim.Thickness.Millimetres),
            Tie: (tight ? 2 : 0) + (shim.Condition == StockCondition.Used ? 1 : 0));
    }

    private static List<List<(PlanChoice Choice, long Cost)>> Weigh(List<List<PlanChoice>> rows, bool setAll)
    {
        var aims = rows.Select(row => row.ConvertAll(c => c.InOrder(setAll))).ToList();
        var least = aims.ConvertAll(row => row.Aggregate((a, b) => [.. a.Zip(b, Math.Min)]));
        var most = aims.ConvertAll(row => row.Aggregate((a, b) => [.. a.Zip(b, Math.Max)]));
        var weights = new long[new PlanChoice().InOrder(setAll).Length];
        var (weight, lesser) = (1L, 0L);
        for (var aim = weights.Length - 1; aim >= 0; aim--)
        {
            // What only shifts a whole row decides nothing: the span above the row's least counts. Sums beyond 64 bits throw.
            var span = Enumerable.Range(0, rows.Count).Sum(r => most[r][aim] - least[r][aim]);
            weights[aim] = weight;
            lesser += weight * span;
            weight = lesser + 1;
        }

        return [.. rows.Select((row, r) => row
            .Select((choice, c) => (choice, Cost: Weighed(aims[r][c], least[r], weights)))
            .OrderBy(c => c.Cost).ThenBy(c => c.choice.Column)
            .ToList())];
    }

    private static long Weighed(long[] aims, long[] least, long[] weights)
    {
        var cost = 0L;
        for (var aim = 0; aim < aims.Length; aim++)
        {
            cost += weights[aim] * (aims[aim] - least[aim]);
        }

        return cost;
    }
}

/// <summary>A valve's shim as chosen by hand: its column, and the place that it is taken from.</summary>
internal sealed record PlanLock(int Column, ShimLot Lot);
