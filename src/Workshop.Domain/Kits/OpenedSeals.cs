using Workshop.Domain.EngineModels;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Kits;

/// <summary>An old seal that may go back in: somebody looks at it.</summary>
/// <param name="PlaceCode">Of the joint or fastener that it seals.</param>
/// <param name="Place">Its name.</param>
/// <param name="PartCode">As the specification names it.</param>
/// <param name="Quantity">How many sit there, in the part's unit.</param>
/// <param name="Policy">Inspect and reuse, or replace if damaged.</param>
public sealed record SealToInspect(string PlaceCode, string Place, string PartCode, decimal Quantity, SealPolicy Policy)
{
    /// <summary>Must have an inspection before the card is signed off; else only what was damaged is entered.</summary>
    public bool MustBeInspected => Policy == SealPolicy.InspectAndReuse;
}

/// <summary>Seals of what was opened that may go back in.</summary>
public static class OpenedSeals
{
    /// <summary>Each place and part once, in the order of the specification.</summary>
    /// <param name="specification">Holds the items and all that they open.</param>
    /// <param name="items">What was begun.</param>
    /// <param name="parts">What the stores know each code of the specification as: crush rings never go back in unless the maker says so.</param>
    public static IReadOnlyList<SealToInspect> Of(
        EngineSpecification specification, IEnumerable<ServiceItem> items, IReadOnlyDictionary<string, Part> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var opened = Opened.By(specification, items);
        var all = opened.Joints.SelectMany(j => j.Seals, (j, seal) => (j.Code, j.Name, seal, UsedOnce: false))
            .Concat(opened.Fasteners.SelectMany(f => f.Seals, (f, seal) => (f.Code, f.Name, seal, UsedOnce: f.UseOnce)))
            .Select(s => new SealToInspect(
                s.Code, s.Name, s.seal.PartCode, s.seal.Quantity, s.seal.PolicyFor(s.UsedOnce, parts.GetValueOrDefault(s.seal.PartCode))))
            .Where(s => s.Policy != SealPolicy.ReplaceAlways);

        // A joint may carry the same ring twice: one look at both, by the stricter of the two policies.
        return [.. all.GroupBy(s => (s.PlaceCode, s.PartCode)).Select(g => g.First() with
        {
            Quantity = g.Sum(s => s.Quantity), Policy = g.Min(s => s.Policy),
        })];
    }

    /// <summary>The inspections that stand: those that no later one supersedes.</summary>
    public static IReadOnlyList<SealInspection> Standing(IReadOnlyList<SealInspection> inspections)
    {
        ArgumentNullException.ThrowIfNull(inspections);
        var superseded = inspections.Select(i => i.SupersedesId).ToHashSet();
        return [.. inspections.Where(i => !superseded.Contains(i.Id))];
    }
}
