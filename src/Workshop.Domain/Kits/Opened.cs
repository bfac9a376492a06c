using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Kits;

/// <summary>
/// What service items open together: every joint and every fastener once, however many items need it. A joint opens all
/// its fasteners; a fastener that an item names by itself does not open the joint that it belongs to.
/// </summary>
/// <param name="Joints">In the order of the specification.</param>
/// <param name="Fasteners">Those of the joints and those that belong to none, in the order of the specification.</param>
public sealed record Opened(IReadOnlyList<Joint> Joints, IReadOnlyList<Fastener> Fasteners)
{
    /// <summary>The union over <paramref name="items"/>, whose accesses, joints and fasteners the specification holds.</summary>
    public static Opened By(EngineSpecification specification, IEnumerable<ServiceItem> items)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(items);
        var all = items.ToList();
        var accessCodes = all.SelectMany(i => i.Accesses).ToHashSet(StringComparer.Ordinal);
        var accesses = specification.Accesses.Where(a => accessCodes.Contains(a.Code)).ToList();
        var jointCodes = all.SelectMany(i => i.Joints).Concat(accesses.SelectMany(a => a.Joints)).ToHashSet(StringComparer.Ordinal);
        var joints = specification.Joints.Where(j => jointCodes.Contains(j.Code)).ToList();
        var fastenerCodes = all.SelectMany(i => i.Fasteners)
            .Concat(accesses.SelectMany(a => a.Fasteners))
            .Concat(joints.SelectMany(j => j.Fasteners))
            .ToHashSet(StringComparer.Ordinal);
        return new Opened(joints, [.. specification.Fasteners.Where(f => fastenerCodes.Contains(f.Code))]);
    }

    /// <summary>
    /// What adjustments open beyond the valve clearance check: caps, cam wheels, tensioner, locknuts. The covers, which are off
    /// for the check, are not among them.
    /// </summary>
    /// <param name="specification">The engine.</param>
    /// <param name="adjustments">Items of the kind valve clearance adjustment.</param>
    public static IReadOnlyList<Fastener> BeyondTheCheck(EngineSpecification specification, IEnumerable<ServiceItem> adjustments)
    {
        ArgumentNullException.ThrowIfNull(specification);
        var off = By(specification, specification.ServiceItems.Where(i => i.Kind == ServiceItemKind.ValveClearanceCheck)).Fasteners;
        return [.. By(specification, adjustments.Select(i => i with { Accesses = [] })).Fasteners.Except(off)];
    }
}
