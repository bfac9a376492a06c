using Workshop.Domain.EngineModels;
using static Workshop.Domain.Compression.CompressionWords;

namespace Workshop.Domain.Compression;

/// <summary>
/// Where a weak cylinder likely leaks, never certain. All of it is common practice of the trade, no source: oil seals rings for a
/// moment, so that a pressure that rises with oil speaks for rings or bore, one that stays low for valves or gasket; two neighbours
/// that are low alike speak for the gasket between them; air goes out where it is heard.
/// </summary>
public static class LikelyLeak
{
    /// <summary>With oil it must rise by at least a tenth to count as risen (common practice, no source).</summary>
    public const decimal RiseShare = 0.1m;

    private const string Care = "This is what is likely, by common practice and without a source, not what is certain: confirm it before anything is opened.";

    /// <summary>Sentences about a weak cylinder; the last says that nothing of it is certain.</summary>
    /// <param name="weak">The cylinder.</param>
    /// <param name="all">Every cylinder at that stage.</param>
    /// <param name="layout">Which cylinders stand beside each other.</param>
    /// <param name="tight">Valves that were found tight on this visit.</param>
    public static IReadOnlyList<string> Of(
        CylinderFinding weak, IReadOnlyCollection<CylinderFinding> all, EngineLayout layout, IReadOnlyCollection<ValveKey> tight)
    {
        ArgumentNullException.ThrowIfNull(weak);
        ArgumentNullException.ThrowIfNull(all);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(tight);
        var sentences = new List<string>();
        sentences.AddRange(ByOil(weak));
        sentences.AddRange(all.Where(other => AreLowTogether(weak, other, layout)).Select(other =>
            $"Cylinder {other.Cylinder} beside it is low too: likely the gasket between the two."));
        sentences.AddRange((weak.LeakDown?.HeardAt ?? []).Select(ByAir));
        var valves = tight.Where(v => v.Cylinder == weak.Cylinder).Order().ToArray();
        if (valves.Length > 0)
        {
            sentences.Add($"Found tight: {string.Join("; ", valves.Select(v => v.Spoken))}. A valve that does not close leaks; measure again once it is set.");
        }

        return sentences.Count > 0
            ? sentences.Append(Care).ToArray()
            : ["What was measured does not tell where it leaks: measure once more with oil in the cylinder, or by leak-down."];
    }

    /// <summary>Whether the pressure rose with oil; nothing where it was not measured dry and wet alike.</summary>
    public static bool? RisesWithOil(CylinderFinding cylinder)
    {
        ArgumentNullException.ThrowIfNull(cylinder);
        return cylinder is { Dry: { } dry, Wet: { } wet }
            ? wet.Pressure.Kilopascals >= (1 + RiseShare) * dry.Pressure.Kilopascals
            : null;
    }

    /// <summary>They stand beside each other, both are low when dry, and oil brings neither up.</summary>
    private static bool AreLowTogether(CylinderFinding weak, CylinderFinding other, EngineLayout layout) =>
        Math.Abs(weak.Cylinder - other.Cylinder) == 1
        && layout.Cylinders.Single(c => c.Number == weak.Cylinder).Bank == layout.Cylinders.Single(c => c.Number == other.Cylinder).Bank
        && IsLow(weak) && IsLow(other);

    private static bool IsLow(CylinderFinding finding) =>
        finding is { Dry: not null, Verdict: CylinderVerdict.Below or CylinderVerdict.Uneven } && RisesWithOil(finding) != true;

    private static IEnumerable<string> ByOil(CylinderFinding weak) => RisesWithOil(weak) switch
    {
        true => [$"With oil it rises from {Kpa(weak.Dry!.Pressure)} to {Kpa(weak.Wet!.Pressure)} kPa: likely piston rings or bore."],
        false => [$"With oil it stays low ({Kpa(weak.Dry!.Pressure)}, then {Kpa(weak.Wet!.Pressure)} kPa): likely valves or head gasket."],
        null => [],
    };

    private static string ByAir(AirPlace place) => place switch
    {
        AirPlace.Intake => "Air at the intake: likely an intake valve.",
        AirPlace.Exhaust => "Air at the exhaust: likely an exhaust valve.",
        AirPlace.Crankcase => "Air in the crankcase: likely piston rings or bore; a little is usual.",
        AirPlace.Coolant => "Bubbles in the coolant: likely the head gasket, or a crack.",
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, null),
    };
}
