using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Web.Features.Drift;

namespace Workshop.Web.Features.Clearances;

/// <summary>Holds what a send read as found against what was to be expected, while the cover is open.</summary>
internal static class EntryCheck
{
    /// <summary>Nothing where the send has no cold reading as found, or nothing is known of the engine model.</summary>
    public static async Task<VisitCheck?> Of(VisitEntry entry, IReadOnlyCollection<ClearanceReading> sent, CancellationToken ct)
    {
        var asked = sent.Where(r => r is { Stage: Stage.AsFound, NotCold: false }).Select(r => r.Key).ToHashSet();
        if (asked.Count == 0 || await VisitHistory.Load(entry.Db, entry.Open, ct) is not { Fit: { } fit } history)
        {
            return null;
        }

        var lobes = ReadingRules.LobesOf(entry.Specification);
        var typed = lobes.Select(lobe => Typed(entry, lobe)).OfType<TypedReading>().ToList();
        var check = VisitCheck.Of(history.Known.Engine, fit, history.EngineAt, typed, lobes.Count);
        return check with { Readings = [.. check.Readings.Where(r => asked.Contains(r.Lobe))] };
    }

    private static TypedReading? Typed(VisitEntry entry, LobeKey lobe)
    {
        var attempts = entry.Known.Readings.Where(r => r.Key == lobe && r is { Stage: Stage.AsFound, NotCold: false })
            .OrderBy(r => r.Attempt).ToList();
        return attempts.Count == 0 ? null : new TypedReading(lobe, attempts[^1].Bracket, [.. attempts.SkipLast(1).Select(r => r.Bracket)]);
    }
}
