using Workshop.Domain.Estimates;

namespace Workshop.Web.Features.Estimates;

/// <summary>A line as it is shown.</summary>
/// <param name="Key">By which an edit names it.</param>
/// <param name="Option">The possible item, by code, with which alone it is done.</param>
/// <param name="UnitPrice">Of one hour, piece or litre, before tax; absent where none is known.</param>
/// <param name="Net">Absent where the price is not known.</param>
/// <param name="UnitCost">The manager's alone.</param>
/// <param name="Missing">What stands in the way of a price, as a sentence.</param>
public sealed record LineView(
    string Key, EstimateLineKind Kind, EstimateCharge Charge, string? Option, string? OptionName, string Text, string? PartCode,
    decimal Quantity, EstimateUnit Unit, decimal? UnitPrice, string? TaxCode, decimal? TaxPercent, decimal? Net, decimal? UnitCost,
    string? Missing, bool Dropped, decimal? ProposedUnitPrice, string? Reason);

/// <summary>Net, the tax of each rate, gross.</summary>
public sealed record SumView(decimal Net, IReadOnlyList<TaxOfRate> Rates, decimal Tax, decimal Gross)
{
    public static SumView Of(EstimateSums sums)
    {
        ArgumentNullException.ThrowIfNull(sums);
        return new SumView(sums.Net, sums.Rates, sums.Tax, sums.Gross);
    }
}

/// <summary>What a possible item alone would add.</summary>
public sealed record OptionView(string Code, string Name, SumView Sums);
