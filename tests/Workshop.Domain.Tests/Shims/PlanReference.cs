using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Tests.Shims;

/// <summary>
/// The shim plan's problem stated a second time, as plainly as possible: every shim one by one, every aim in a fixed number of
/// bits of a 128-bit number, and the Hungarian method written out. It shares no code with the planner, so that agreement means
/// something.
/// </summary>
internal sealed class PlanReference
{
    public static readonly Int128 Never = Int128.One << 110;

    private readonly PlanTask task;
    private readonly List<MeasuredValve> valves;
    private readonly List<(string Code, decimal Mm, bool FromBox, int InValve)> units;
    private readonly Int128[,] costs;

    public PlanReference(PlanTask task)
    {
        this.task = task;
        valves = [.. task.Measured.Where(IsPlannable).OrderBy(m => m.Valve)];
        units =
        [
            .. valves.Select((v, i) => ($"in-{v.Valve}", v.Shim!.Value.Millimetres, false, i)),
            .. task.Shims.SelectMany(l => Enumerable.Repeat((l.Code, l.Thickness.Millimetres, l.Source == LotSource.Box, -1), l.Count)),
        ];
        costs = new Int128[valves.Count, units.Count];
        for (var v = 0; v < valves.Count; v++)
        {
            for (var u = 0; u < units.Count; u++)
            {
                costs[v, u] = Cost(v, u);
            }
        }
    }

    /// <summary>Valves that are out and that no permitted thickness helps: they stand outside the assignment.</summary>
    public int Hopeless => task.Measured.Count(m => !IsPlannable(m));

    public int Valves => valves.Count;

    /// <summary>Totals in one number, as the planner says them; the smaller the better.</summary>
    public Int128 Pack(PlanTotals t) => task.Options.SetAll
        ? Bits(t.Outside - Hopeless, t.Likely, t.NearLimit, t.DistanceMicrometres, t.Shafts, t.Changed, t.FromBox)
        : Bits(t.Outside - Hopeless, t.Likely, t.Shafts, t.Changed, t.NearLimit, t.FromBox, t.DistanceMicrometres);

    /// <summary>The cost of the plan by this statement of the problem; throws where it gives a shim twice.</summary>
    public Int128 CostOf(ShimPlan plan)
    {
        var held = UnitsOf(plan);
        Assert.Equal(held.Count, held.Distinct().Count());
        return held.Select((u, v) => costs[v, u]).Aggregate(Shafts(plan.Shafts.Count), (a, b) => a + b);
    }

    /// <summary>The least cost over every set of shafts, each by the Hungarian method.</summary>
    public Int128 Least() => Sets().Min(shafts => Hungarian(Open(shafts)) + Shafts(shafts.Count));

    /// <summary>The least cost by trying everything; shafts are those of the valves that are changed.</summary>
    public Int128 LeastByTryingEverything() => Try(0, new HashSet<int>(), new HashSet<string>());

    /// <summary>
    /// Whether some valves could hand shims round, or trade with what lies free, and be better off: a cycle of negative cost in
    /// the residual graph. None proves the optimum for the shafts that the plan takes out.
    /// </summary>
    public bool HasNegativeCycle(ShimPlan plan)
    {
        var (held, open) = (UnitsOf(plan), Open([.. plan.Shafts]));
        var listed = Enumerable.Range(0, valves.Count).Where(v => open[v]).ToList();
        var free = Enumerable.Range(0, units.Count).Where(u => !held.Contains(u) && (units[u].InValve < 0 || open[units[u].InValve])).ToList();
        var pool = listed.Count;
        var distance = new Int128[pool + 1, pool + 1];
        for (var a = 0; a < pool; a++)
        {
            var mine = costs[listed[a], held[listed[a]]];
            for (var b = 0; b < pool; b++)
            {
                distance[a, b] = a == b ? 0 : costs[listed[a], held[listed[b]]] - mine;
            }

            distance[a, pool] = free.Count == 0 ? Never : free.Min(u => costs[listed[a], u]) - mine;
            distance[pool, a] = 0;
        }

        for (var k = 0; k <= pool; k++)
        {
            for (var a = 0; a <= pool; a++)
            {
                for (var b = 0; b <= pool; b++)
                {
                    if (distance[a, k] < Never / 2 && distance[k, b] < Never / 2 && distance[a, k] + distance[k, b] < distance[a, b])
                    {
                        distance[a, b] = distance[a, k] + distance[k, b];
                    }
                }
            }
        }

        return Enumerable.Range(0, pool + 1).Any(i => distance[i, i] < 0);
    }

    private Int128 Try(int v, HashSet<int> taken, HashSet<string> shafts)
    {
        if (v == valves.Count)
        {
            return Shafts(shafts.Count);
        }

        var best = Never;
        for (var u = 0; u < units.Count; u++)
        {
            if (costs[v, u] >= Never || !taken.Add(u))
            {
                continue;
            }

            var opened = u == v ? [] : ShaftsOf(v).Where(s => !task.ShaftsOut.Contains(s) && shafts.Add(s)).ToList();
            best = Int128.Min(best, costs[v, u] + Try(v + 1, taken, shafts));
            opened.ForEach(s => shafts.Remove(s));
            taken.Remove(u);
        }

        return best;
    }

    private static Int128 Bits(params long[] weightiestFirst) => weightiestFirst.Aggregate(Int128.Zero, (sum, aim) => (sum << 18) + aim);

    private Int128 Shafts(int count) => task.Options.SetAll ? Bits(0, 0, 0, 0, count, 0, 0) : Bits(0, 0, count, 0, 0, 0, 0);

    private Int128 Cost(int v, int u)
    {
        var (valve, unit, range) = (valves[v], units[u], task.Specification.Shims!);
        var stays = unit.InValve == v;
        var lobes = valve.Lobes.Select(l => Lobe(valve, l.Key, l.Value, stays ? valve.Shim!.Value.Millimetres : unit.Mm, stays)).ToList();
        if (!stays && (unit.Mm < range.Smallest.Millimetres || unit.Mm > range.Largest.Millimetres || lobes.Any(l => l.Outside)
            || (unit.InValve >= 0 && !task.Options.MayMoveBetweenValves)))
        {
            return Never;
        }

        var likely = lobes.Any(l => l.Leaves > task.Options.Threshold) ? 1 : 0;
        var changed = stays || (IsNear(valve) && ShaftsOf(v).Count > 0) ? 0 : 1;
        var near = stays ? (IsNear(valve) ? 1 : 0) : lobes.Any(l => l.Near) ? 1 : 0;
        var box = unit.FromBox ? 1 : 0;
        var outside = stays && IsOut(valve) ? 1 : 0;
        var distance = lobes.Max(l => l.Distance);
        return task.Options.SetAll
            ? Bits(outside, likely, near, distance, 0, changed, box)
            : Bits(outside, likely, 0, changed, near, box, distance);
    }

    private (bool Outside, bool Near, double? Leaves, long Distance) Lobe(MeasuredValve valve, int lobe, Bracket bracket, decimal mm, bool stays)
    {
        var limits = LimitsOf(valve, lobe);
        var (lower, upper, ratio) = (limits.Lower.Millimetres, limits.Upper.Millimetres, limits.LeverRatio.Value);
        var then = bracket.MiddleMm!.Value + (ratio * (valve.Shim!.Value.Millimetres - mm));
        var width = (double)(bracket.NoGo!.Value - bracket.Go!.Value);
        var micrometer = stays ? 0 : (double)ratio * (double)task.Options.MicrometerUncertaintyMm;
        var u = Math.Sqrt((width * width / 12) + Math.Pow((double)task.Options.BladeUncertaintyMm, 2) + (2 * micrometer * micrometer));
        var guard = task.Options.Guard switch { GuardBand.Off => 0, GuardBand.At95Percent => 1.65 * u, _ => 2 * u };
        var proven = (double)then >= (double)lower + guard && (double)then <= (double)upper - guard;
        var disproven = (double)then < (double)lower - guard || (double)then > (double)upper + guard;
        return (then < lower || then > upper, task.Options.Guard != GuardBand.Off && !proven && !disproven,
            task.Leaving?.Invoke(new LobeKey(valve.Valve, lobe), then),
            (long)decimal.Round(decimal.Abs(then - limits.SetTo.Millimetres) * 1000, MidpointRounding.AwayFromZero));
    }

    private bool IsPlannable(MeasuredValve valve)
    {
        if (!IsOut(valve))
        {
            return true;
        }

        var windows = valve.Lobes.Select(l => (Limits: LimitsOf(valve, l.Key), Middle: l.Value.MiddleMm!.Value)).Select(l => (
            Thinnest: valve.Shim!.Value.Millimetres + ((l.Middle - l.Limits.Upper.Millimetres) / l.Limits.LeverRatio.Value),
            Thickest: valve.Shim!.Value.Millimetres + ((l.Middle - l.Limits.Lower.Millimetres) / l.Limits.LeverRatio.Value))).ToList();
        var (thinnest, thickest) = (windows.Max(w => w.Thinnest), windows.Min(w => w.Thickest));
        var range = task.Specification.Shims!;
        return thinnest <= thickest && thickest >= range.Smallest.Millimetres && thinnest <= range.Largest.Millimetres;
    }

    private bool IsOut(MeasuredValve valve) => valve.Lobes.Any(l =>
        l.Value.NoGo!.Value <= LimitsOf(valve, l.Key).Lower || l.Value.Go!.Value > LimitsOf(valve, l.Key).Upper);

    private bool IsNear(MeasuredValve valve) => !IsOut(valve)
        && valve.Lobes.Any(l => Lobe(valve, l.Key, l.Value, valve.Shim!.Value.Millimetres, stays: true).Near);

    private ClearanceLimits LimitsOf(MeasuredValve valve, int lobe) =>
        task.Specification.Limits.Single(l => l.Side == valve.Valve.Side && l.Lobe == lobe);

    private List<string> ShaftsOf(int v) => task.Specification.ValveTrain == ValveTrainKind.ShimOverBucket
        ? []
        : [.. task.Specification.Camshafts.Where(c => c.Valves.Contains(valves[v].Valve)).Select(c => c.Code)];

    private List<int> UnitsOf(ShimPlan plan)
    {
        var taken = new HashSet<int>();
        return [.. valves.Select((valve, v) =>
        {
            var shim = plan.Valves.Single(p => p.Valve == valve.Valve).Shim;
            var unit = shim is null ? v : Enumerable.Range(0, units.Count).First(u => units[u].Code == shim.Code && !taken.Contains(u));
            taken.Add(unit);
            return unit;
        })];
    }

    private IEnumerable<List<Camshaft>> Sets()
    {
        var shafts = task.Specification.Camshafts.Where(c => !task.ShaftsOut.Contains(c.Code)).ToList();
        return Enumerable.Range(0, 1 << shafts.Count).Select(set => shafts.Where((_, i) => (set & (1 << i)) != 0).ToList());
    }

    private bool[] Open(List<Camshaft> shafts) => [.. Enumerable.Range(0, valves.Count).Select(v =>
        ShaftsOf(v).All(s => task.ShaftsOut.Contains(s) || shafts.Any(c => c.Code == s)))];

    /// <summary>Kuhn and Munkres with potentials, row by row; a valve that is shut in keeps its own.</summary>
    private Int128 Hungarian(bool[] open)
    {
        var (n, m) = (valves.Count, units.Count);
        Int128 At(int v, int u) => u == v || (open[v] && (units[u].InValve < 0 || open[units[u].InValve])) ? costs[v, u] : Never;
        var (rowPotential, columnPotential, rowOf) = (new Int128[n + 1], new Int128[m + 1], new int[m + 1]);
        for (var row = 1; row <= n; row++)
        {
            var (least, way, used, column) = (new Int128[m + 1], new int[m + 1], new bool[m + 1], 0);
            Array.Fill(least, Never * 4);
            rowOf[0] = row;
            do
            {
                used[column] = true;
                var (delta, next, at) = (Never * 4, 0, rowOf[column]);
                for (var u = 1; u <= m; u++)
                {
                    if (used[u])
                    {
                        continue;
                    }

                    var reduced = At(at - 1, u - 1) - rowPotential[at] - columnPotential[u];
                    (least[u], way[u]) = reduced < least[u] ? (reduced, column) : (least[u], way[u]);
                    (delta, next) = least[u] < delta ? (least[u], u) : (delta, next);
                }

                for (var u = 0; u <= m; u++)
                {
                    if (used[u])
                    {
                        rowPotential[rowOf[u]] += delta;
                        columnPotential[u] -= delta;
                    }
                    else
                    {
                        least[u] -= delta;
                    }
                }

                column = next;
            }
            while (rowOf[column] != 0);

            while (column != 0)
            {
                (rowOf[column], column) = (rowOf[way[column]], way[column]);
            }
        }

        return Enumerable.Range(1, m).Where(u => rowOf[u] != 0).Select(u => At(rowOf[u] - 1, u - 1)).Aggregate(Int128.Zero, (a, b) => a + b);
    }
}
