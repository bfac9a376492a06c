using Workshop.Domain.Consumables;
using Workshop.Web.Data.Seeding;

namespace Workshop.Web.Features.Consumables;

/// <summary>A standard size, whether or not the stores have it.</summary>
/// <param name="InnerToleranceMm">Absent where none is kept.</param>
/// <param name="Source">Where the row comes from, and whether anybody saw it there.</param>
public sealed record StandardSize(string Designation, SealSize Size, decimal? InnerToleranceMm, decimal? SectionToleranceMm, string Source);

/// <summary>The standard sizes of seals that the service carries; read once.</summary>
internal static class SizeCatalogue
{
    private static readonly Lazy<IReadOnlyList<StandardSize>> Rows = new(() =>
    [
        .. SeedFiles.ORings().Select(r => Of(r.Key, r.Value, SealSize.ORing(r.Value.InnerMm, r.Value.SectionMm))),
        .. SeedFiles.MetricORings().Select(r => Of(r.Key, r.Value, SealSize.ORing(r.Value.InnerMm, r.Value.SectionMm))),
        .. SeedFiles.SealingRings().Select(r => Of($"DIN 7603 A {r.Key}", r.Value, SealSize.Ring(r.Value.InnerMm, r.Value.OuterMm, r.Value.SectionMm))),
    ]);

    public static IReadOnlyList<StandardSize> All => Rows.Value;

    /// <summary>By its number: "AS568-214".</summary>
    public static StandardSize? Find(string designation) => All.FirstOrDefault(r => r.Designation == designation);

    /// <summary>The numbers of the catalogue, for a sentence that says what is allowed.</summary>
    public static string Numbers => string.Join(", ", SeedFiles.ORings().Keys);

    private static StandardSize Of(string designation, RingSize row, SealSize size) =>
        new(designation, size, row.InnerToleranceMm, row.SectionToleranceMm, row.Source);
}
