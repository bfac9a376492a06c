using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Shims;

/// <summary>Shims that make no difference to each other: of one thickness, condition and kind of source.</summary>
/// <param name="Lots">The places that they lie in, in the order in which they are taken.</param>
internal sealed record PlanColumn(ShimThickness Thickness, StockCondition Condition, LotSource Source, ValveKey? Valve, IReadOnlyList<ShimLot> Lots)
{
    public int Count => Lots.Sum(l => l.Count);
}

/// <summary>What a plan may choose from, in one order whatever the order of the input, so that equal tasks get equal plans.</summary>
internal static class PlanColumns
{
    public static IReadOnlyList<PlanColumn> Of(PlanTask task, ShimRange range, IEnumerable<PlanValve> plannable)
    {
        var inValves = plannable.Where(v => !v.Empty).Select(v => new ShimLot(
            ShimLot.CodeIn(v.Key), v.Shim!.Value, StockCondition.Used, LotSource.Valve, 1, v.Key.Spoken, v.Key));
        return [.. task.Shims
            .Where(l => l.Count > 0 && l.Thickness >= range.Smallest && l.Thickness <= range.Largest)
            .Concat(inValves)
            .GroupBy(l => (l.Thickness, l.Condition, l.Source, l.Valve))
            .OrderBy(g => g.Key.Thickness).ThenBy(g => g.Key.Condition).ThenBy(g => g.Key.Source).ThenBy(g => g.Key.Valve)
            .Select(g => new PlanColumn(g.Key.Thickness, g.Key.Condition, g.Key.Source, g.Key.Valve,
                [.. g.OrderBy(l => l.Place, StringComparer.Ordinal).ThenBy(l => l.Code, StringComparer.Ordinal)]))];
    }
}
