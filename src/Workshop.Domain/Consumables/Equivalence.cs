using System.Globalization;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Consumables;

/// <summary>How another part could stand in for one.</summary>
public enum EquivalenceKind
{
    /// <summary>Somebody wrote down that it does the same work.</summary>
    Named,

    SameSizeOtherMaterial,

    SameSize,

    /// <summary>Of another series of sizes, metric beside inch: near, not the same.</summary>
    NearSize,
}

/// <summary>
/// Whether one size stands in for another. A near size is offered to be looked at, with the difference; nobody says that it fits.
/// </summary>
public static class Equivalence
{
    /// <summary>Most that diameters of near sizes differ. Common practice; no source.</summary>
    public const decimal NearDiameterMm = 0.6m;

    /// <summary>Most that sections differ: inch series and metric series of ISO 3601 lie 0.01 to 0.03 mm apart, trade sizes up to 0.15.</summary>
    public const decimal NearSectionMm = 0.15m;

    /// <summary>How a size lies to another; nothing where it is too far off, or another kind of seal.</summary>
    public static EquivalenceKind? Between(SealSize wanted, string? material, SealSize other, string? otherMaterial)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(other);
        if (wanted.Kind != other.Kind
            || Math.Abs(wanted.InnerMm - other.InnerMm) > NearDiameterMm
            || Math.Abs(wanted.SectionMm - other.SectionMm) > NearSectionMm
            || (wanted.Kind == PartKind.SealingRing && Math.Abs(wanted.OuterMm - other.OuterMm) > NearDiameterMm))
        {
            return null;
        }

        return wanted != other ? EquivalenceKind.NearSize
            : string.Equals(material, otherMaterial, StringComparison.OrdinalIgnoreCase) ? EquivalenceKind.SameSize
            : EquivalenceKind.SameSizeOtherMaterial;
    }

    /// <summary>In words, how the other differs: "inner +0.01 mm, section -0.03 mm"; "the same size" where it does not.</summary>
    public static string Difference(SealSize wanted, SealSize other)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(other);
        var said = new[]
        {
            Say("inner", other.InnerMm - wanted.InnerMm),
            wanted.Kind == PartKind.SealingRing ? Say("outer", other.OuterMm - wanted.OuterMm) : null,
            Say(wanted.Kind == PartKind.SealingRing ? "thickness" : "section", other.SectionMm - wanted.SectionMm),
        }.OfType<string>().ToList();
        return said.Count == 0 ? "the same size" : string.Join(", ", said);
    }

    private static string? Say(string what, decimal off) =>
        off == 0 ? null : string.Create(CultureInfo.InvariantCulture, $"{what} {(off > 0 ? "+" : "−")}{Math.Abs(off):0.###} mm");
}
