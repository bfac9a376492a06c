using Workshop.Domain.Stores;

namespace Workshop.Domain.Estimates;

/// <summary>A part as it is sold.</summary>
/// <param name="Code">As the caller names it, whatever part it means by now.</param>
/// <param name="Name">As the stores call it; the code where they do not know it.</param>
/// <param name="NetPrice">Of one piece, or of one litre of what is counted in millilitres, before tax; absent where nobody has said one.</param>
/// <param name="Cost">What that costs the workshop, where it is known.</param>
/// <param name="Tax">Absent where no rate holds.</param>
public sealed record PartPrice(string Code, string Name, PartUnit Unit, decimal? NetPrice, decimal? Cost, TaxRate? Tax)
{
    /// <summary>The unit in which an estimate counts it.</summary>
    public EstimateUnit CountedIn => Unit == PartUnit.Millilitre ? EstimateUnit.Millilitre : EstimateUnit.Piece;

    /// <summary>A quantity of it at its price; nothing where price or tax is not known.</summary>
    public PricedQuantity? Of(decimal quantity) => NetPrice is { } price && Tax is { } tax
        ? new PricedQuantity(quantity, CountedIn, price, Cost, tax.Code, tax.Percent)
        : null;
}

/// <summary>The prices of one day.</summary>
/// <param name="Currency">Three letters of ISO 4217.</param>
/// <param name="LabourPerHour">Before tax; absent until the workshop has said it.</param>
/// <param name="UsualTax">Of labour, typed lines, and parts that name no rate; absent until the workshop has said it.</param>
/// <param name="Parts">By the code that the kit names.</param>
public sealed record PriceBook(
    string Currency, decimal? LabourPerHour, TaxRate? UsualTax, TaxTable Tax, IReadOnlyDictionary<string, PartPrice> Parts)
{
    /// <summary>What codes of the specification mean in the stores, as <see cref="Kits.Kit.Of"/> asks.</summary>
    public IReadOnlyDictionary<string, Part> Known { get; init; } = new Dictionary<string, Part>();

    /// <summary>The part of a code; one that the stores do not know has no price.</summary>
    public PartPrice PartOf(string code) =>
        Parts.GetValueOrDefault(code) ?? new PartPrice(code, code, PartUnit.Piece, null, null, UsualTax);
}
