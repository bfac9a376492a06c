using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Records;

/// <summary>A shim that went into a valve at a visit, by the ledger.</summary>
/// <param name="SameOne">The very piece that came out of it.</param>
public sealed record FittedShim(ValveKey Valve, StockCondition Condition, bool SameOne);

/// <summary>What a visit did to the valves, lobe by lobe and valve by valve, in figures and in words.</summary>
public static class RecordedLobes
{
    /// <summary>Every lobe that was measured at the visit, in order.</summary>
    /// <param name="specification">Limits.</param>
    /// <param name="readings">Of the visit, superseded ones included.</param>
    /// <param name="shims">Of the visit, superseded ones included.</param>
    /// <param name="events">Of the visit.</param>
    public static IReadOnlyList<RecordedLobe> Of(
        EngineSpecification specification, IReadOnlyCollection<ClearanceReading> readings, IReadOnlyCollection<ShimObservation> shims,
        IReadOnlyCollection<ValveEvent> events)
    {
        var lobes = new List<RecordedLobe>();
        foreach (var lobe in ReadingRules.LobesOf(specification))
        {
            var limits = ReadingRules.LimitsOf(specification, lobe);
            var found = Reading(ReadingRules.Standing(readings, lobe, Stage.AsFound), limits);
            var left = Reading(ReadingRules.Standing(readings, lobe, Stage.AsLeft), limits);
            if (found is null && left is null)
            {
                continue;
            }

            var set = IsSet(lobe.Valve, shims, events);
            lobes.Add(new RecordedLobe(
                lobe.Valve, lobe.Lobe, lobe.Spoken, limits.Lower, limits.Upper, limits.SetTo, found, left, set, Say(found, left, set)));
        }

        return lobes;
    }

    /// <summary>Those that the visit left outside their limits, for certain: "1 exhaust 2 (too tight)".</summary>
    public static IReadOnlyList<string> LeftOutside(IReadOnlyList<RecordedLobe> lobes)
    {
        ArgumentNullException.ThrowIfNull(lobes);
        return [.. lobes.Where(l => (l.Left ?? l.Found)?.Verdict is Verdict.TooTight or Verdict.TooWide).Select(l => $"{l.Name} ({(l.Left ?? l.Found)!.Verdict.Spoken()})")];
    }

    /// <summary>The shim of every valve where one came out or went in.</summary>
    /// <param name="shims">Of the visit, superseded ones included.</param>
    /// <param name="fitted">By the ledger, the last one of each valve.</param>
    public static IReadOnlyList<RecordedShim> Shims(IReadOnlyCollection<ShimObservation> shims, IReadOnlyCollection<FittedShim> fitted)
    {
        ArgumentNullException.ThrowIfNull(shims);
        ArgumentNullException.ThrowIfNull(fitted);
        return [.. shims.Select(s => s.Valve).Distinct().Order().Select(valve =>
        {
            var (cameOut, wentIn) = (ShimRules.Standing(shims, valve, Stage.AsFound), ShimRules.Standing(shims, valve, Stage.AsLeft));
            var known = fitted.FirstOrDefault(f => f.Valve == valve);
            return new RecordedShim(
                valve, valve.Spoken, cameOut?.Thickness, wentIn?.Thickness, known?.Condition, Say(cameOut, wentIn, known));
        })];
    }

    /// <summary>A shim of another thickness went in, or the screw was turned.</summary>
    /// <param name="valve">Which.</param>
    /// <param name="shims">Of the visit, superseded ones included.</param>
    /// <param name="events">Of the visit.</param>
    public static bool IsSet(ValveKey valve, IReadOnlyCollection<ShimObservation> shims, IReadOnlyCollection<ValveEvent> events)
    {
        ArgumentNullException.ThrowIfNull(events);
        return events.Any(e => e.Valve == valve && e.Kind == ValveEventKind.ScrewTurned)
            || (ShimRules.Standing(shims, valve, Stage.AsLeft) is { } wentIn
                && (wentIn.Thickness is null || ShimRules.Standing(shims, valve, Stage.AsFound)?.Thickness != wentIn.Thickness));
    }

    private static RecordedReading? Reading(ClearanceReading? reading, ClearanceLimits limits) => reading is null
        ? null
        : new RecordedReading(
            reading.Kind, reading.Go, reading.NoGo, ClearanceVerdict.Of(reading.Bracket, limits).Verdict, reading.NotCold, reading.NotRemeasured);

    private static string Say(RecordedReading? found, RecordedReading? left, bool set)
    {
        var words = (found, left, set) switch
        {
            ({ } f, null, false) => Words(f),
            ({ } f, null, true) => $"{Words(f)} as found; set",
            ({ } f, { Carried: true }, _) => $"{Words(f)}; left as it was",
            ({ } f, { } l, false) when f.Verdict == l.Verdict => $"{Words(f)} as found and as left",
            ({ } f, { } l, false) => $"{Words(f)} as found; {Words(l)} as left",
            ({ } f, { } l, true) => $"{Words(f)} as found; set; {Words(l)} as left",
            (null, { } l, true) => $"set; {Words(l)} as left",
            (null, { } l, false) => $"{Words(l)} as left",
            _ => "not measured",
        };
        return $"{char.ToUpperInvariant(words[0])}{words[1..]}.";
    }

    private static string Words(RecordedReading reading) => $"{reading.Verdict.Spoken()}{(reading.NotCold ? " (engine not cold)" : "")}";

    private static string Say(ShimObservation? cameOut, ShimObservation? wentIn, FittedShim? known)
    {
        var first = cameOut is null ? null : $"{Thick(cameOut)} out";
        var second = wentIn is null ? null
            : known?.SameOne == true ? $"{Thick(wentIn)} put back"
            : known is null ? $"{Thick(wentIn)} in"
            : $"{Thick(wentIn)} in, {(known.Condition == StockCondition.New ? "new" : "used")}";
        return string.Join("; ", new[] { first, second }.OfType<string>());
    }

    private static string Thick(ShimObservation shim) => shim.Thickness is { } thickness
        ? FormattableString.Invariant($"{thickness.Millimetres:0.000} mm")
        : "a shim that was not measured";
}
