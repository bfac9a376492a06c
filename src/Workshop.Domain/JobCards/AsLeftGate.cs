using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Kits;
using Workshop.Domain.Shims;
using Workshop.Domain.TorqueSheets;

namespace Workshop.Domain.JobCards;

/// <summary>
/// When the readings as left open. Where shafts came out: after every fastener that the adjustment opens beyond what
/// the check does (caps, cam wheels, tensioner, locknuts; not the covers, which stay off) is ticked, and after that two full turns by hand are confirmed, both
/// since a shim was last moved. A valve on a piston is found by hand, not by the starter.
/// </summary>
public static class AsLeftGate
{
    /// <summary>What stands in the way, in sentences; empty where as left is open.</summary>
    /// <param name="specification">The engine.</param>
    /// <param name="underWay">Items that are certain or begun.</param>
    /// <param name="shims">Of the visit.</param>
    /// <param name="events">Of the visit.</param>
    /// <param name="ticks">Of the visit.</param>
    /// <param name="turns">Of the visit.</param>
    /// <param name="empty">Valves whose shim came out and that have got no other.</param>
    public static IReadOnlyList<string> Against(
        EngineSpecification specification,
        IReadOnlyCollection<ItemUnderWay> underWay,
        IReadOnlyCollection<ShimObservation> shims,
        IReadOnlyCollection<ValveEvent> events,
        IReadOnlyCollection<FastenerTick> ticks,
        IReadOnlyCollection<HandTurn> turns,
        IReadOnlyCollection<ValveKey> empty)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(turns);
        ArgumentNullException.ThrowIfNull(empty);
        if (LastMoved(specification, shims, events) is not { } moved)
        {
            return [];
        }

        var own = TightBefore(specification, underWay);
        var lines = TorqueSheet.Of(specification, underWay, ticks).Lines.Where(l => own.Contains(l.Fastener.Code)).ToList();
        var open = lines.Where(l => !(l.IsTightened && l.Tick.Last!.TickedAt >= moved)).ToList();
        var reasons = new List<string>();
        if (empty.Count > 0)
        {
            reasons.Add($"Fit a shim first: by the ledger none lies in {string.Join(", ", empty.Order().Select(v => v.Spoken))}.");
        }

        if (open.Count > 0)
        {
            reasons.Add($"Tick on the torque sheet first: {string.Join(", ", open.Select(l => l.Fastener.Name))}.");
        }

        var closed = lines.Where(l => !open.Contains(l)).Select(l => l.Tick.Last!.TickedAt).Append(moved).Max();
        if (turns.All(t => t.ConfirmedAt < closed))
        {
            reasons.Add("Turn the crankshaft two full turns by hand in running direction, and confirm that there was no hard stop and that the marks are right again.");
        }

        return reasons;
    }

    /// <summary>The codes of the fasteners that are tight before anything is measured as left: what adjustments opened beyond the check. The covers stay off.</summary>
    public static IReadOnlySet<string> TightBefore(EngineSpecification specification, IEnumerable<ItemUnderWay> underWay)
    {
        var adjustments = underWay.Select(i => i.Item).Where(i => i.Kind == ServiceItemKind.ValveClearanceAdjustment);
        return Opened.BeyondTheCheck(specification, adjustments).Select(f => f.Code).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>When a shim came out or went in, or a screw was turned, last; nothing where none was. Putting a measure right moves nothing.</summary>
    private static Instant? LastMoved(
        EngineSpecification specification, IReadOnlyCollection<ShimObservation> shims, IReadOnlyCollection<ValveEvent> events) =>
        specification.Valves.Select(v => DisturbedValves.LastChangeOf(v.Key, shims, events))
            .Concat(shims.Where(s => s.Stage == Stage.AsFound && s.SupersedesId is null).Select(s => (Instant?)s.MeasuredAt))
            .Max();
}
