using Workshop.Domain.EngineModels;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Kits;

/// <summary>One part of a kit.</summary>
/// <param name="PartCode">As the stores name it; as the specification does where they do not know it.</param>
/// <param name="Needed">Used in any case, in the part's own unit.</param>
/// <param name="HaveReady">On the bench beside that, taken only when it turns out to be wanted.</param>
/// <param name="Reasons">What makes up the two quantities; their sum is the sum of these.</param>
public sealed record KitLine(string PartCode, decimal Needed, decimal HaveReady, IReadOnlyList<KitReason> Reasons)
{
    /// <summary>Absent where the stores do not know it.</summary>
    public Part? Part { get; init; }

    public PartUnit Unit => Part?.Unit ?? PartUnit.Piece;

    public decimal Wanted => Needed + HaveReady;

    /// <summary>Why it is there: "two sealing rings 14 x 18: level plug and oil drain plug".</summary>
    public string Sentence => KitWords.Sentence(this);
}

/// <summary>What goes on threads: thread lock, lubricant. Not counted; it comes in bottles.</summary>
/// <param name="Name">As the specification writes it.</param>
/// <param name="Fasteners">Names of the fasteners that get it.</param>
public sealed record KitCompound(string Name, IReadOnlyList<string> Fasteners);

/// <summary>
/// What lies on the bench before the covers come off: the parts that the items name and the seals, sealant and use-once
/// fasteners of what they open, each joint and fastener counted once.
/// </summary>
/// <param name="Lines">By part code.</param>
/// <param name="Compounds">By name.</param>
public sealed record Kit(IReadOnlyList<KitLine> Lines, IReadOnlyList<KitCompound> Compounds)
{
    /// <summary>
    /// The kit of a visit. Seals of what the items under way open are needed where they are replaced always, else lie ready;
    /// what only items held ready would open or consume lies ready as a whole.
    /// </summary>
    /// <param name="specification">Holds the items and all that they open.</param>
    /// <param name="underWay">Items that are done in any case; order and repetition do not matter.</param>
    /// <param name="heldReady">Likely or possible items that nobody has begun.</param>
    /// <param name="parts">
    /// What each code of the specification means in the stores now: two codes that mean one part make one line, and what is
    /// fitted once is replaced unless the maker allows it again. Absent: nothing is known of any part.
    /// </param>
    public static Kit Of(
        EngineSpecification specification, IEnumerable<ServiceItem> underWay, IEnumerable<ServiceItem> heldReady,
        IReadOnlyDictionary<string, Part>? parts = null)
    {
        ArgumentNullException.ThrowIfNull(specification);
        parts ??= new Dictionary<string, Part>();
        var certain = InOrder(underWay);
        var held = InOrder(heldReady).Where(h => certain.All(c => c.Code != h.Code)).ToList();
        var opened = Opened.By(specification, certain);
        var openedToo = held.Select(item => (item.Name, Opened: Opened.By(specification, [item]))).ToList();

        var reasons = new List<(string PartCode, KitReason Reason)>();
        foreach (var joint in specification.Joints)
        {
            var items = opened.Joints.Contains(joint) ? null : Openers(openedToo, o => o.Joints.Contains(joint));
            reasons.AddRange(OfJoint(joint, items, parts));
        }

        foreach (var fastener in specification.Fasteners)
        {
            var items = opened.Fasteners.Contains(fastener) ? null : Openers(openedToo, o => o.Fasteners.Contains(fastener));
            reasons.AddRange(OfFastener(fastener, items, parts));
        }

        reasons.AddRange(certain.SelectMany(item => item.Parts.Select(part => (part.PartCode, new KitReason(
            part.Quantity, $"for {KitReason.Inside(item.Name)}", KitReason.Inside(item.Name), part.HaveReady ? KitUse.WhenWanted : KitUse.Needed, [])))));
        reasons.AddRange(held.SelectMany(item => item.Parts.Select(part => (part.PartCode, new KitReason(
            part.Quantity, $"for {KitReason.Inside(item.Name)}", KitReason.Inside(item.Name), KitUse.WhenBegun, [KitReason.Inside(item.Name)])))));

        return new Kit(
            [.. reasons
                .Where(r => r.Reason.Quantity > 0)
                .GroupBy(r => parts.GetValueOrDefault(r.PartCode)?.Code ?? r.PartCode, StringComparer.Ordinal)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => LineOf(g.Key, [.. g.Select(r => r.Reason)], parts.GetValueOrDefault(g.First().PartCode)))],
            CompoundsOf(opened.Fasteners));
    }

    private static KitLine LineOf(string partCode, List<KitReason> reasons, Part? part) => new(
        partCode, reasons.Where(r => r.IsNeeded).Sum(r => r.Quantity), reasons.Where(r => !r.IsNeeded).Sum(r => r.Quantity), reasons)
    {
        Part = part,
    };

    /// <summary>One item once; in one order, so that the order of booking leaves no trace.</summary>
    private static List<ServiceItem> InOrder(IEnumerable<ServiceItem> items) =>
        [.. items.DistinctBy(i => i.Code).OrderBy(i => i.Code, StringComparer.Ordinal)];

    private static List<string> Openers(List<(string Name, Opened Opened)> held, Func<Opened, bool> opens) =>
        [.. held.Where(h => opens(h.Opened)).Select(h => KitReason.Inside(h.Name))];

    /// <param name="heldItems">Nothing where the joint is opened in any case; else the items held ready that would open it.</param>
    private static IEnumerable<(string, KitReason)> OfJoint(Joint joint, List<string>? heldItems, IReadOnlyDictionary<string, Part> parts)
    {
        if (heldItems is { Count: 0 })
        {
            return [];
        }

        var spot = KitReason.Inside(joint.Name);
        var seals = joint.Seals.Select(seal => OfSeal(seal, fastenerUsedOnce: false, $"at the {spot}", spot, heldItems, parts));
        return joint.Sealant is { } sealant
            ? seals.Append((sealant.PartCode, new KitReason(
                sealant.Quantity, $"at the {spot}", spot, heldItems is null ? KitUse.Needed : KitUse.WhenBegun, heldItems ?? [])))
            : seals;
    }

    private static IEnumerable<(string, KitReason)> OfFastener(
        Fastener fastener, List<string>? heldItems, IReadOnlyDictionary<string, Part> parts)
    {
        if (heldItems is { Count: 0 })
        {
            return [];
        }

        var spot = KitReason.Inside(fastener.Name);
        var place = fastener.Count == 1 ? $"on the {spot}" : $"on the {spot} ({fastener.Count} of them)";
        return fastener.Seals.Select(seal => OfSeal(seal, fastener.UseOnce, place, spot, heldItems, parts));
    }

    private static (string, KitReason) OfSeal(
        Seal seal, bool fastenerUsedOnce, string place, string spot, List<string>? heldItems, IReadOnlyDictionary<string, Part> parts)
    {
        var part = parts.GetValueOrDefault(seal.PartCode);
        var use = UseOf(seal.PolicyFor(fastenerUsedOnce, part), heldItems);
        return (seal.PartCode, new KitReason(seal.Quantity, place, spot, use, heldItems ?? [])
        {
            NeverFittedTwice = seal.Policy != SealPolicy.ReplaceAlways && !fastenerUsedOnce && seal.IsNeverFittedTwice(part),
        });
    }

    private static KitUse UseOf(SealPolicy policy, List<string>? heldItems) => (policy, heldItems) switch
    {
        (_, not null) => KitUse.WhenBegun,
        (SealPolicy.ReplaceAlways, _) => KitUse.Needed,
        (SealPolicy.InspectAndReuse, _) => KitUse.WhenUnfit,
        (SealPolicy.ReplaceIfDamaged, _) => KitUse.WhenDamaged,
        _ => throw new ArgumentOutOfRangeException(nameof(policy), policy, null),
    };

    private static IReadOnlyList<KitCompound> CompoundsOf(IReadOnlyList<Fastener> opened) =>
        [.. opened
            .Where(f => !string.IsNullOrWhiteSpace(f.ThreadCompound))
            .GroupBy(f => f.ThreadCompound!, f => f.Name, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new KitCompound(g.Key, [.. g]))];
}
