namespace Workshop.Domain.Estimates;

/// <summary>A line with its price.</summary>
/// <param name="Quantity">In <paramref name="Unit"/>; negative of what is taken back.</param>
/// <param name="UnitPrice">Of one hour, piece or litre, before tax.</param>
/// <param name="UnitCost">What that costs the workshop, where it is known.</param>
/// <param name="TaxPercent">0 to 100.</param>
public sealed record PricedQuantity(
    decimal Quantity, EstimateUnit Unit, decimal UnitPrice, decimal? UnitCost, string TaxCode, decimal TaxPercent)
{
    /// <summary>
    /// Before tax, to the cent: quantity / base quantity times price (EN 16931-1, BT-131 from BT-129, BT-146 and BT-149, where the
    /// base quantity is 60 minutes, one piece or 1000 ml).
    /// </summary>
    public decimal Net => Money.Round(Quantity * UnitPrice / BaseOf(Unit));

    /// <summary>What it costs the workshop, to the cent; nothing where that is not known.</summary>
    public decimal? Cost => UnitCost is { } cost ? Money.Round(Quantity * cost / BaseOf(Unit)) : null;

    /// <summary>How many of the unit a price is for: 60 minutes, one piece, 1000 ml.</summary>
    public static int BaseOf(EstimateUnit unit) => unit switch
    {
        EstimateUnit.Minute => 60,
        EstimateUnit.Piece => 1,
        EstimateUnit.Millilitre => 1000,
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, null),
    };
}

/// <param name="Net">The sum of the lines of that rate.</param>
/// <param name="Tax">Of that sum, to the cent.</param>
public sealed record TaxOfRate(string Code, decimal Percent, decimal Net, decimal Tax);

/// <summary>
/// What lines come to, by the rules of the core invoice model EN 16931-1: each line is rounded to the cent, the net sum is the sum of
/// the rounded lines (BR-CO-10), tax is reckoned once a rate from the sum of its lines and rounded (BR-CO-17), and gross is net and
/// tax (BR-CO-14, BR-CO-15).
/// </summary>
/// <param name="Rates">By code, then percentage.</param>
public sealed record EstimateSums(decimal Net, IReadOnlyList<TaxOfRate> Rates)
{
    private const decimal Hundred = 100;

    public decimal Tax => Rates.Sum(r => r.Tax);

    public decimal Gross => Net + Tax;

    /// <summary>The order of the lines leaves no trace.</summary>
    public static EstimateSums Of(IEnumerable<PricedQuantity> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var rates = lines.GroupBy(l => (l.TaxCode, l.TaxPercent))
            .OrderBy(g => g.Key.TaxCode, StringComparer.Ordinal).ThenBy(g => g.Key.TaxPercent)
            .Select(g => (g.Key, Net: g.Sum(l => l.Net)))
            .Select(g => new TaxOfRate(g.Key.TaxCode, g.Key.TaxPercent, g.Net, Money.Round(g.Net * g.Key.TaxPercent / Hundred)))
            .ToList();
        return new EstimateSums(rates.Sum(r => r.Net), rates);
    }
}

/// <summary>What the workshop keeps of a sum. For the manager's eyes.</summary>
/// <param name="Cost">Of the lines whose cost is known.</param>
/// <param name="Margin">What those lines bring beyond their cost.</param>
/// <param name="LinesWithoutCost">Lines that no cost is known of; they are in neither figure.</param>
public sealed record EstimateMargin(decimal Cost, decimal Margin, int LinesWithoutCost)
{
    public static EstimateMargin Of(IEnumerable<PricedQuantity> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var all = lines.ToList();
        var known = all.Where(l => l.Cost is not null).ToList();
        var cost = known.Sum(l => l.Cost!.Value);
        return new EstimateMargin(cost, known.Sum(l => l.Net) - cost, all.Count - known.Count);
    }
}
