using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Finishing;

/// <summary>What is counted in and back: a tool, rags, what was taken out of the engine.</summary>
/// <param name="Code">Small letters, digits, hyphens; of what is told by its name alone, the name.</param>
public sealed record CountedThing(string Code, string Name);

/// <param name="WentIn">Pieces that went to the engine.</param>
/// <param name="CameBack">Pieces that lie on the bench again.</param>
/// <param name="Taps">How many taps the two are made of: taps are only ever added, so the greater number knows more.</param>
/// <param name="Explanation">The row that says where the difference is, while it is that difference.</param>
public sealed record ThingCount(CountedThing Thing, int WentIn, int CameBack, int Taps, CountExplanation? Explanation)
{
    /// <summary>Below 0: so many are not back. Above 0: so many more came back than went in.</summary>
    public int Difference => CameBack - WentIn;

    /// <summary>All of it came back, or what did not is explained.</summary>
    public bool IsSettled => Difference == 0 || Explanation is not null;

    /// <summary>"2 not back", "1 more came back than went in", "all back".</summary>
    public string Words => Difference switch
    {
        0 => WentIn == 0 ? "none counted" : "all back",
        < 0 => $"{-Difference} not back",
        _ => $"{Difference} more came back than went in",
    };
}

/// <summary>
/// Parts and tools counted in and back: what stays inside an engine ruins it. The list is made of what the job takes, nobody
/// types it; people tap how many. Common practice, no source.
/// </summary>
public static class BayCount
{
    public const int MostPieces = 999;

    /// <summary>What usually goes to the engine at such a job.</summary>
    /// <param name="specification">That the card pinned.</param>
    /// <param name="items">Service items under way.</param>
    public static IReadOnlyList<CountedThing> Usual(EngineSpecification specification, IReadOnlyCollection<ServiceItem> items)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(items);
        var measures = items.Any(i => i.Kind is ServiceItemKind.ValveClearanceCheck or ServiceItemKind.ValveClearanceAdjustment);
        var shims = measures && specification.Shims is not null;
        var things = items.SelectMany(i => i.SpecialTools).Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(t => (Code: t, Name: SpecificationWords.SpokenTool(t)))
            .Select(t => new CountedThing(CodeOf(t.Code), $"{char.ToUpperInvariant(t.Name[0])}{t.Name[1..]}")).ToList();
        Add(measures, "feeler-blades", "Feeler blades");
        Add(measures, "turning-tool", "Tool for turning the crankshaft");
        Add(shims, "magnet", "Magnet");
        Add(shims, "removed-shims", "Shims taken out, each accounted for");
        Add(true, "rags", "Rags and cloths");
        Add(true, "caps", "Caps and plugs in openings");
        Add(true, "removed-seals", "Old seals and rings taken out");
        return things.DistinctBy(t => t.Code, StringComparer.Ordinal).ToArray();

        void Add(bool wanted, string code, string name)
        {
            if (wanted)
            {
                things.Add(new CountedThing(code, name));
            }
        }
    }

    /// <summary>A code from a name: small letters and digits, everything between them a hyphen.</summary>
    public static string CodeOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var letters = string.Concat(name.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : '-'));
        return string.Join('-', letters.Split('-', StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>The usual things, then what was counted beside them, each with its counts.</summary>
    public static IReadOnlyList<ThingCount> Of(
        IReadOnlyList<CountedThing> usual, IReadOnlyCollection<CountTap> taps, IReadOnlyCollection<CountExplanation> explanations)
    {
        ArgumentNullException.ThrowIfNull(usual);
        ArgumentNullException.ThrowIfNull(taps);
        ArgumentNullException.ThrowIfNull(explanations);
        var beside = taps.Where(t => usual.All(u => u.Code != t.ThingCode)).OrderBy(t => t.CountedAt)
            .Select(t => new CountedThing(t.ThingCode, t.ThingName)).DistinctBy(t => t.Code, StringComparer.Ordinal);
        return usual.Concat(beside).Select(thing =>
        {
            var (wentIn, cameBack) = (Sum(taps, thing.Code, CountWay.WentIn), Sum(taps, thing.Code, CountWay.CameBack));
            return new ThingCount(thing, wentIn, cameBack, taps.Count(t => t.ThingCode == thing.Code), explanations
                .Where(e => e.ThingCode == thing.Code && e.Difference == cameBack - wentIn).MaxBy(e => e.ExplainedAt));
        }).ToArray();
    }

    /// <summary>Of a visit as its facts stand.</summary>
    public static IReadOnlyList<ThingCount> Of(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return Of(Usual(facts.Specification, [.. facts.UnderWay.Select(i => i.Item)]), facts.Finished.Taps, facts.Finished.Explanations);
    }

    private static int Sum(IEnumerable<CountTap> taps, string code, CountWay way) => taps.Where(t => t.ThingCode == code && t.Way == way).Sum(t => t.Change);
}
