using System.Globalization;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Consumables;

/// <summary>Nominal size of a seal, in mm.</summary>
/// <param name="Kind">Sealing ring or O-ring.</param>
/// <param name="InnerMm">Inner diameter.</param>
/// <param name="OuterMm">Outer diameter; of an O-ring its inner diameter and two sections.</param>
/// <param name="SectionMm">Thickness of a sealing ring, section of an O-ring.</param>
public sealed record SealSize(PartKind Kind, decimal InnerMm, decimal OuterMm, decimal SectionMm)
{
    /// <summary>Smallest and largest length that a search is asked for.</summary>
    public const decimal SmallestMm = 0.1m;

    public const decimal LargestMm = 1000m;

    /// <summary>An O-ring by inner diameter and section, as ISO 3601-1 names it.</summary>
    public static SealSize ORing(decimal innerMm, decimal sectionMm) => new(PartKind.ORing, innerMm, innerMm + (2 * sectionMm), sectionMm);

    /// <summary>A flat ring by inner and outer diameter and thickness, as DIN 7603 names it.</summary>
    public static SealSize Ring(decimal innerMm, decimal outerMm, decimal thicknessMm) =>
        new(PartKind.SealingRing, innerMm, outerMm, thicknessMm);

    public override string ToString() => Kind == PartKind.ORing
        ? string.Create(CultureInfo.InvariantCulture, $"{InnerMm:0.###} x {SectionMm:0.###}")
        : string.Create(CultureInfo.InvariantCulture, $"{InnerMm:0.###} x {OuterMm:0.###} x {SectionMm:0.###}");
}

/// <summary>How far the section of an O-ring may be off, either way.</summary>
public static class SectionTolerance
{
    /// <summary>In mm, by section in mm. ISO 3601-1, from memory and not verified; beyond its largest section the last step stands.</summary>
    public static decimal Mm(decimal sectionMm) => sectionMm switch
    {
        <= 2.25m => 0.08m,
        <= 3.15m => 0.09m,
        <= 4.5m => 0.10m,
        <= 6.3m => 0.13m,
        _ => 0.15m,
    };
}

/// <summary>How an O-ring's inner diameter lies on what it is put on.</summary>
public static class Stretch
{
    /// <summary>Most that a ring is stretched for good. Public seal handbooks, seen; ISO 3601-2 from memory.</summary>
    public const decimal MostPercent = 5m;

    /// <summary>What handbooks call best; rings are ranked by how near they come.</summary>
    public const decimal BestPercent = 2m;

    /// <summary>Percent by which a ring grows when it is put on a diameter; negative where it lies loose.</summary>
    public static decimal Percent(decimal innerMm, decimal onMm)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(innerMm);
        return (onMm - innerMm) / innerMm * 100;
    }
}
