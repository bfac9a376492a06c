using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Clearances;

/// <summary>
/// Which valves a visit has disturbed, by what stands on its card: their clearance as found holds no longer, so each must be
/// measured as left.
/// </summary>
public static class DisturbedValves
{
    /// <summary>The disturbed valves, each with what disturbed it, in words that follow "since".</summary>
    /// <param name="specification">Says which valves a camshaft or follower shaft disturbs when it comes out.</param>
    /// <param name="shims">Shims seen at the visit, superseded ones left out or not: either way the valve was opened.</param>
    /// <param name="events">What was done to valves at the visit.</param>
    /// <param name="changes">Parts changed at the visit; one that names no valve serves all of them.</param>
    public static IReadOnlyDictionary<ValveKey, string> Of(
        EngineSpecification specification,
        IReadOnlyCollection<ShimObservation> shims,
        IReadOnlyCollection<ValveEvent> events,
        IReadOnlyCollection<PartChange> changes)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(shims);
        ArgumentNullException.ThrowIfNull(events);
        ArgumentNullException.ThrowIfNull(changes);
        var disturbed = new Dictionary<ValveKey, string>();
        foreach (var valve in specification.Valves.Select(v => v.Key).Order())
        {
            if (ReasonOf(valve, specification, shims, events, changes) is { } reason)
            {
                disturbed.Add(valve, reason);
            }
        }

        return disturbed;
    }

    /// <summary>
    /// When a valve was last changed at the visit: a shim went in, a screw was turned, or nobody knows. A reading as left from
    /// before then says nothing of how it is left. Nothing where it was not changed.
    /// </summary>
    /// <param name="valve">Which.</param>
    /// <param name="shims">Shims seen at the visit.</param>
    /// <param name="events">What was done to valves at the visit.</param>
    public static Instant? LastChangeOf(
        ValveKey valve, IReadOnlyCollection<ShimObservation> shims, IReadOnlyCollection<ValveEvent> events) =>
        shims.Where(s => s.Valve == valve && s.Stage == Stage.AsLeft).Select(s => (Instant?)s.MeasuredAt)
            .Concat(events.Where(e => e.Valve == valve && e.Kind != ValveEventKind.NotDisturbed).Select(e => (Instant?)e.HappenedAt))
            .Max();

    private static string? ReasonOf(
        ValveKey valve,
        EngineSpecification specification,
        IReadOnlyCollection<ShimObservation> shims,
        IReadOnlyCollection<ValveEvent> events,
        IReadOnlyCollection<PartChange> changes)
    {
        if (shims.Any(s => s.Valve == valve && s.Stage == Stage.AsLeft))
        {
            return "a shim was fitted";
        }

        if (shims.Any(s => s.Valve == valve))
        {
            return "its shim came out";
        }

        if (events.Any(e => e.Valve == valve && e.Kind == ValveEventKind.ScrewTurned))
        {
            return "its screw was turned";
        }

        if (events.Any(e => e.Valve == valve && e.Kind == ValveEventKind.ChangeUnknown))
        {
            return "nobody knows whether it was changed";
        }

        if (changes.FirstOrDefault(c => c.Valve is null || c.Valve == valve) is { } change)
        {
            return change.Valve is null ? $"the {PartWord(change.Part)} was changed" : $"its {PartWord(change.Part)} was changed";
        }

        // A shaft that came out disturbs all its valves, unless somebody says of one that it was not.
        var said = events.Any(e => e.Valve == valve && e.Kind == ValveEventKind.NotDisturbed);
        return !said && ShaftsOut(specification, shims).FirstOrDefault(c => c.Valves.Contains(valve)) is { } shaft
            ? $"the {LowerFirst(shaft.Name)} came out"
            : null;
    }

    /// <summary>Shims that lie under the bucket or the follower come out only with their shaft; those on top do not.</summary>
    private static IEnumerable<Camshaft> ShaftsOut(
        EngineSpecification specification, IReadOnlyCollection<ShimObservation> shims) =>
        specification.ValveTrain is ValveTrainKind.ShimUnderBucket or ValveTrainKind.ShimUnderFingerFollower
            ? specification.Camshafts.Where(c => shims.Any(s => c.Valves.Contains(s.Valve)))
            : [];

    private static string PartWord(ValvePart part) => part switch
    {
        ValvePart.Valve => "valve",
        ValvePart.Seat => "valve seat",
        ValvePart.Camshaft => "camshaft",
        ValvePart.Follower => "follower",
        ValvePart.Bucket => "bucket",
        ValvePart.CylinderHead => "cylinder head",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, null),
    };

    private static string LowerFirst(string name) =>
        name.Length > 1 && char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name;
}
