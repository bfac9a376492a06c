using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Shims;

/// <summary>
/// Where the valves of an engine stand in the middle of a visit, by the rows of its card: which brackets hold, which shim they
/// were taken with, and whether a valve was changed since.
/// </summary>
public static class MeasuredValves
{
    /// <summary>The valves that have a reading or a shim, in order.</summary>
    /// <param name="specification">The engine.</param>
    /// <param name="readings">Of the visit, superseded ones included.</param>
    /// <param name="shims">Of the visit, superseded ones included.</param>
    /// <param name="events">Of the visit.</param>
    /// <param name="shimsBefore">The shim that each valve had when the visit began, where an earlier one tells.</param>
    public static IReadOnlyList<MeasuredValve> Of(
        EngineSpecification specification,
        IReadOnlyCollection<ClearanceReading> readings,
        IReadOnlyCollection<ShimObservation> shims,
        IReadOnlyCollection<ValveEvent> events,
        IReadOnlyDictionary<ValveKey, ShimThickness> shimsBefore)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(shimsBefore);
        return [.. specification.Valves.Select(v => v.Key).Order().Select(valve =>
        {
            var lobes = ReadingRules.LobesOf(specification).Where(l => l.Valve == valve).ToList();
            var found = ShimRules.Standing(shims, valve, Stage.AsFound);
            var fitted = ShimRules.Standing(shims, valve, Stage.AsLeft);
            var before = found is null ? Known(shimsBefore, valve) : found.Thickness;
            var changed = DisturbedValves.LastChangeOf(valve, shims, events);
            var after = changed is { } at
                ? Standing(lobes, readings, Stage.AsLeft).Where(r => !r.NotRemeasured && r.MeasuredAt >= at).ToList()
                : [];
            if (changed is not null && after.Count == lobes.Count)
            {
                return new MeasuredValve(valve, Brackets(after), fitted is null ? before : fitted.Thickness);
            }

            var asLeft = changed is null ? Standing(lobes, readings, Stage.AsLeft) : [];
            var rows = asLeft.Count == lobes.Count ? asLeft : Standing(lobes, readings, Stage.AsFound);
            return new MeasuredValve(valve, Brackets(rows), before, ChangedSince: changed is not null);
        })];
    }

    /// <summary>
    /// The shim of each valve by what earlier visits tell: the last that was seen, unless it was not measured or somebody may
    /// have changed it since.
    /// </summary>
    /// <param name="shims">Of earlier visits, superseded ones included.</param>
    /// <param name="events">Of earlier visits.</param>
    public static IReadOnlyDictionary<ValveKey, ShimThickness> ShimsBefore(
        IReadOnlyCollection<ShimObservation> shims, IReadOnlyCollection<ValveEvent> events)
    {
        ArgumentNullException.ThrowIfNull(shims);
        ArgumentNullException.ThrowIfNull(events);
        return shims
            .Where(s => !shims.Any(later => later.SupersedesId == s.Id))
            .GroupBy(s => s.Valve)
            .Select(g => g.OrderBy(s => s.MeasuredAt).ThenBy(s => s.Stage).Last())
            .Where(last => last.Thickness is not null && !events.Any(e => e.Valve == last.Valve
                && e.Kind == ValveEventKind.ChangeUnknown && e.HappenedAt >= last.MeasuredAt))
            .ToDictionary(last => last.Valve, last => last.Thickness!.Value);
    }

    private static List<ClearanceReading> Standing(
        IEnumerable<LobeKey> lobes, IReadOnlyCollection<ClearanceReading> readings, Stage stage) =>
        [.. lobes.Select(l => ReadingRules.Standing(readings, l, stage)).OfType<ClearanceReading>()];

    private static Dictionary<int, Bracket> Brackets(IEnumerable<ClearanceReading> readings) =>
        readings.ToDictionary(r => r.Lobe, r => r.Bracket);

    private static ShimThickness? Known(IReadOnlyDictionary<ValveKey, ShimThickness> shims, ValveKey valve) =>
        shims.TryGetValue(valve, out var thickness) ? thickness : null;
}
