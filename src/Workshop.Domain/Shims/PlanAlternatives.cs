using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Shims;

/// <summary>What else could go into a valve: for each the best plan that has it, under the same shafts, and what that is worse in.</summary>
internal sealed class PlanAlternatives(PlanProblem problem, PlanFound found, bool setAll)
{
    private const int AtMost = 3;

    /// <summary>The nearest others, and leaving it as it is where it is changed.</summary>
    /// <param name="valve">Of the problem.</param>
    /// <param name="lots">Where each valve's shim of the plan lies; what it does not take is offered first.</param>
    public IReadOnlyList<ShimAlternative> Of(int valve, IReadOnlyList<ShimLot?> lots)
    {
        var chosen = found.Solution.Choices[valve];
        var others = problem.ChoicesOf(valve).Where(c => c.Column != chosen.Column && c.Column < problem.Columns.Count).ToList();
        return [.. others.Where(c => !c.Stays).OrderBy(c => c.Distance).ThenBy(c => c.Column).Take(AtMost)
            .Concat(others.Where(c => c.Stays))
            .Select(c => Of(valve, c, lots))
            .OfType<ShimAlternative>()];
    }

    /// <summary>Of what nobody takes, the shim that leaves the valve least far outside; nothing where there is none.</summary>
    public ShimAlternative? Nearest(PlanValve valve)
    {
        var old = valve.Shim!.Value;
        var nearest = problem.Columns
            .Where((column, index) => column.Source != LotSource.Valve && found.Solution.Choices.Count(c => c.Column == index) < column.Count)
            .OrderBy(column => valve.DistanceMicrometres(old, column.Thickness.Millimetres))
            .FirstOrDefault();
        return nearest is null ? null : new ShimAlternative(
            nearest.Lots[0],
            [.. valve.With(old, nearest.Thickness.Millimetres).Select(l => l.PredictedMm!.Value)],
            found.Totals,
            "leaves it outside its limits");
    }

    private ShimAlternative? Of(int valve, PlanChoice choice, IReadOnlyList<ShimLot?> lots)
    {
        if (problem.Solve(found.Open, (valve, choice.Column)) is not { } solution)
        {
            return null;
        }

        var at = problem.Valves[valve];
        var totals = solution.Totals(found.Totals.Shafts);
        var column = problem.Columns[choice.Column];
        return new ShimAlternative(
            choice.Stays ? null : column.Lots.FirstOrDefault(lot => lots.Count(l => l?.Code == lot.Code) < lot.Count, column.Lots[0]),
            choice.Stays
                ? [.. at.Lobes.Select(l => l.LevelMm!.Value)]
                : [.. at.With(at.Shim!.Value, column.Thickness.Millimetres).Select(l => l.PredictedMm!.Value)],
            totals,
            Cost(totals));
    }

    private string Cost(PlanTotals with)
    {
        var plan = found.Totals;
        var differences = new[]
        {
            Said(with.Outside - plan.Outside, "valve outside its limits", "valves outside their limits"),
            Said(with.Likely - plan.Likely, "valve likely to leave its limits", "valves likely to leave their limits"),
            Said(with.Changed - plan.Changed, "valve changed", "valves changed"),
            Said(with.NearLimit - plan.NearLimit, "valve near a limit", "valves near a limit"),
            Said(with.FromBox - plan.FromBox, "shim from the box", "shims from the box"),
            (with.DistanceMicrometres - plan.DistanceMicrometres) switch
            {
                0 => null,
                > 0 and var more => $"{more / 1000m:0.000} mm farther from the aims in all",
                var less => $"{-less / 1000m:0.000} mm nearer to the aims in all",
            },
        }.OfType<string>().ToList();
        return differences.Count > 0 ? string.Join(", ", differences)
            : with.CompareTo(plan, setAll) == 0 ? "as good" : "costs nothing";
    }

    private static string? Said(int difference, string one, string many) => difference switch
    {
        0 => null,
        1 or -1 => $"1 {one} {(difference > 0 ? "more" : "fewer")}",
        _ => $"{Math.Abs(difference)} {many} {(difference > 0 ? "more" : "fewer")}",
    };
}

/// <summary>Which shim of a column each valve takes: those chosen by hand theirs, the others in order of place; none where one is to be ordered.</summary>
internal static class PlanLots
{
    public static IReadOnlyList<ShimLot?> Of(
        PlanProblem problem, PlanSolution solution, IReadOnlyDictionary<ValveKey, PlanLock> locks)
    {
        var left = problem.Columns.SelectMany(c => c.Lots).GroupBy(l => l.Code, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.First().Count, StringComparer.Ordinal);
        foreach (var locked in locks.Values)
        {
            left[locked.Lot.Code]--;
        }

        var lots = new List<ShimLot?>();
        for (var valve = 0; valve < problem.Valves.Count; valve++)
        {
            var column = solution.Choices[valve].Column;
            if (locks.TryGetValue(problem.Valves[valve].Key, out var locked))
            {
                lots.Add(locked.Lot);
                continue;
            }

            var lot = column < problem.Columns.Count ? problem.Columns[column].Lots.First(l => left[l.Code] > 0) : null;
            lots.Add(lot);
            if (lot is not null)
            {
                left[lot.Code]--;
            }
        }

        return lots;
    }
}
