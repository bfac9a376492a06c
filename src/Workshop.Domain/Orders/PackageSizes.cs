using System.Globalization;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Orders;

/// <summary>A supplier sells whole packages, and no fewer than some.</summary>
public static class PackageSizes
{
    /// <summary>The least that can be ordered and is enough: whole packages, no fewer than the supplier sells; nothing for nothing.</summary>
    /// <param name="wanted">0 or above, in the part's unit.</param>
    /// <param name="pack">In one package, above 0.</param>
    /// <param name="smallest">The least sold at once; absent where one package is.</param>
    public static decimal RoundUp(decimal wanted, decimal pack, decimal? smallest)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(wanted);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pack);
        return wanted == 0 ? 0 : Math.Ceiling(Math.Max(wanted, smallest ?? 0) / pack) * pack;
    }

    /// <summary>Nothing when the supplier sells so much at once.</summary>
    /// <param name="field">Of the quantity, as the caller wrote it.</param>
    /// <param name="part">What is ordered.</param>
    /// <param name="quantity">In the part's unit.</param>
    /// <param name="supply">As they sell it; absent where nothing is known.</param>
    public static FieldFault? Refuse(string field, Part part, decimal quantity, PartSupply? supply)
    {
        ArgumentNullException.ThrowIfNull(part);
        if (part.Unit == PartUnit.Piece && quantity != decimal.Truncate(quantity))
        {
            return new FieldFault(field, Text($"{field} is {quantity}: {part.Name} comes in whole pieces."));
        }

        if (supply is null)
        {
            return null;
        }

        var allowed = RoundUp(quantity, supply.PackQuantity, supply.SmallestQuantity);
        return allowed == quantity ? null : new FieldFault(field, Text(
            $"{field} is {quantity}: {part.Name} is sold in packages of {part.Unit.Say(supply.PackQuantity)}{Least(part, supply)}; {part.Unit.Say(allowed)} is the next that can be had."));
    }

    private static string Least(Part part, PartSupply supply) =>
        supply.SmallestQuantity is { } least ? $", at least {part.Unit.Say(least)} at once" : "";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
