using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Ignition;

/// <summary>Which plugs an engine has, which entry counts, and whether what goes back is as the maker wants it.</summary>
public static class PlugRules
{
    /// <summary>Gaps that can be typed: beyond these it is no gap of a plug.</summary>
    public const decimal SmallestGapMm = 0.1m;
    public const decimal LargestGapMm = 3m;
    public const int GapDecimals = 2;

    /// <summary>Every plug, in order of cylinder; one a cylinder where nothing is stated.</summary>
    public static IReadOnlyList<PlugKey> PlugsOf(EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(specification);
        return [.. specification.Layout.Cylinders.OrderBy(c => c.Number).SelectMany(c =>
            Enumerable.Range(1, specification.SparkPlugs?.PerCylinder ?? 1).Select(plug => new PlugKey(c.Number, plug)))];
    }

    /// <summary>The entry of a plug that counts: the last; nothing where there is none.</summary>
    public static PlugCheck? Standing(IEnumerable<PlugCheck> ofTheVisit, PlugKey plug) => Attempts.Last(ofTheVisit.Where(c => c.Key == plug));

    /// <summary>
    /// The plugs that a visit used, by the stores' code, each once: where somebody wrote a plug down, what was written counts, whatever
    /// its code; of the others the kit's item says it. So a plug that stands in for the kit's takes its place, and one that goes back
    /// leaves its new one in the stores.
    /// </summary>
    /// <param name="kitCode">The code of the kit's plugs; nothing where the engine model names none.</param>
    /// <param name="inKit">How many of them the done items renew; 0 where none does.</param>
    /// <param name="ofTheVisit">What was written down, all attempts; a new plug without a code cannot be counted and is left out.</param>
    public static IReadOnlyDictionary<string, decimal> Used(string? kitCode, decimal inKit, IReadOnlyCollection<PlugCheck> ofTheVisit)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(inKit);
        var standing = Attempts.LastOfEach(ofTheVisit, c => c.Key).ToArray();
        var byKit = decimal.Max(0, inKit - standing.Length);
        return standing.Where(c => c is { Renewed: true, PartCode: not null }).Select(c => (Code: c.PartCode!, Quantity: 1m))
            .Concat(kitCode is not null && byKit > 0 ? [(kitCode, byKit)] : Array.Empty<(string Code, decimal Quantity)>())
            .GroupBy(u => u.Code, u => u.Quantity, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(), StringComparer.Ordinal);
    }

    /// <summary>Nothing where the engine has the plug; else the fault, which says which it has.</summary>
    public static FieldFault? FaultOfPlug(string field, PlugKey plug, EngineSpecification specification)
    {
        var known = PlugsOf(specification);
        return known.Contains(plug)
            ? null
            : new FieldFault(field, $"{field} is {plug}: the engine has no such plug; cylinder and plug are one of {string.Join(", ", known)}.");
    }

    /// <summary>A plug that is cracked or burnt away does not go back in.</summary>
    public static FieldFault? FaultOfRefitting(string field, PlugCondition condition, bool renewed) =>
        !renewed && condition is (PlugCondition.CrackedInsulator or PlugCondition.WornElectrode)
            ? new FieldFault(field, $"{field} is false with a plug that has a {condition.Spoken()}: such a plug is not refitted; renew it.")
            : null;

    /// <summary>What stands against the gap that goes back; nothing where it is allowed, or nothing is stated.</summary>
    public static string? AgainstGapLeft(PlugCheck check, SparkPlugs? stated)
    {
        ArgumentNullException.ThrowIfNull(check);
        return stated is not null && Judge(check.GapLeftMm, stated) is { IsAllowed: false } judged
            ? $"goes back with a gap that is {judged.Words}; set it or renew it"
            : null;
    }

    /// <summary>A gap against what is allowed, in words.</summary>
    public static (bool IsAllowed, string Words) Judge(decimal gapMm, SparkPlugs stated)
    {
        ArgumentNullException.ThrowIfNull(stated);
        var range = FormattableString.Invariant($"{stated.GapSmallestMm:0.0#} to {stated.GapLargestMm:0.0#} mm");
        return gapMm < stated.GapSmallestMm ? (false, $"too narrow: {range} is allowed")
            : gapMm > stated.GapLargestMm ? (false, $"too wide: {range} is allowed")
            : (true, $"within {range}");
    }
}
