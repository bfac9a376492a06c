using System.Globalization;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Kits;

/// <summary>A quantity in whole packages, as they stand on the shelf.</summary>
/// <param name="Count">Whole packages, the fewest that hold it.</param>
/// <param name="Each">What one holds, in the part's unit.</param>
/// <param name="Wanted">In the part's unit, above 0.</param>
public sealed record Packages(int Count, decimal Each, decimal Wanted)
{
    /// <summary>In the last package, once what is wanted is out of it.</summary>
    public decimal LeftOver => (Count * Each) - Wanted;

    /// <summary>Nothing where the part comes singly, or nothing is wanted.</summary>
    public static Packages? Of(decimal wanted, Part? part) =>
        part?.PackQuantity is { } each && each > 0 && wanted > 0 && (each != 1 || part.Unit == PartUnit.Millilitre)
            ? new Packages((int)decimal.Ceiling(wanted / each), each, wanted)
            : null;

    /// <summary>"2 bottles of 1,000 ml for 1,600 ml, 400 ml left over".</summary>
    public string InWords(Part part)
    {
        ArgumentNullException.ThrowIfNull(part);
        var package = part.Kind switch { PartKind.Fluid => "bottle", PartKind.Sealant => "tube", _ => "pack" };
        var left = LeftOver > 0 ? $", {part.Unit.Say(LeftOver)} left over" : "";
        return string.Create(CultureInfo.InvariantCulture,
            $"{Count} {package}{(Count == 1 ? "" : "s")} of {part.Unit.Say(Each)} for {part.Unit.Say(Wanted)}{left}");
    }
}
