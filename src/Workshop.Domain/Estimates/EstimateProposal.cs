using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;

namespace Workshop.Domain.Estimates;

/// <summary>A line as the prices and the engine model propose it, before a person has looked at it.</summary>
/// <param name="Source">Where it comes from: <c>item:</c>, <c>access:</c> or <c>part:</c> and the code.</param>
/// <param name="Option">The possible item, by code, with which alone it is done.</param>
/// <param name="UnitPrice">Absent where none is known; then <paramref name="Missing"/> says so.</param>
/// <param name="Missing">What stands in the way of a price, as a sentence; nothing where the line has one.</param>
public sealed record ProposedLine(
    string Source, EstimateLineKind Kind, EstimateCharge Charge, string? Option, string Text, string? PartCode,
    decimal Quantity, EstimateUnit Unit, decimal? UnitPrice, decimal? UnitCost, TaxRate? Tax, string? Missing)
{
    /// <summary>One line of a proposal: the same source may stand in the visit and in options, and once as "if used".</summary>
    public string Key => LineKey.Of(Source, Charge, Option);

    /// <summary>Nothing while price or tax is missing.</summary>
    public PricedQuantity? Priced => UnitPrice is { } price && Tax is { } tax
        ? new PricedQuantity(Quantity, Unit, price, UnitCost, tax.Code, tax.Percent)
        : null;
}

/// <summary>How a line of a proposal is named: <c>part:R-14</c>, <c>part:R-14|ifUsed</c>, <c>item:adjustment|adjustment</c>.</summary>
internal static class LineKey
{
    public static string Of(string source, EstimateCharge charge, string? option) =>
        $"{source}{(charge == EstimateCharge.IfUsed ? "|ifUsed" : "")}{(option is null ? "" : $"|{option}")}";
}

/// <summary>
/// What a visit would cost: labour of its items and of each access once, and its kit. Certain, likely and begun items are charged;
/// a possible item is an option, shown with what it alone would add. Parts that lie ready are charged only when they are used.
/// </summary>
public static class EstimateProposal
{
    /// <summary>The lines of a visit, those charged in any case first, then what is charged if it is used, then the options.</summary>
    /// <param name="specification">Holds the items.</param>
    /// <param name="items">Those of the card; a begun one is certain.</param>
    /// <param name="prices">Of the day.</param>
    public static IReadOnlyList<ProposedLine> Of(
        EngineSpecification specification, IReadOnlyCollection<ChosenItem> items, PriceBook prices)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(prices);
        var inOrder = items.OrderBy(i => i.Item.Code, StringComparer.Ordinal).ToList();
        var booked = inOrder.Where(i => i.Likelihood != Likelihood.Possible).ToList();
        var lines = Difference(specification, [], booked, option: null, prices).ToList();
        foreach (var possible in inOrder.Where(i => i.Likelihood == Likelihood.Possible))
        {
            lines.AddRange(Difference(specification, booked, [possible], possible.Item.Code, prices));
        }

        return [.. lines.OrderBy(l => l.Option is not null).ThenBy(l => l.Option, StringComparer.Ordinal).ThenBy(l => l.Charge)];
    }

    /// <summary>What one more service item would add to a visit: its own labour and parts, and what has to be opened only for it.</summary>
    /// <param name="specification">Holds the items.</param>
    /// <param name="items">Those of the card; possible ones do not count.</param>
    /// <param name="more">The item that is thought of.</param>
    /// <param name="prices">Of the day.</param>
    public static IReadOnlyList<ProposedLine> OfOneMore(
        EngineSpecification specification, IReadOnlyCollection<ChosenItem> items, ServiceItem more, PriceBook prices)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(more);
        ArgumentNullException.ThrowIfNull(prices);
        var booked = items.Where(i => i.Likelihood != Likelihood.Possible && i.Item.Code != more.Code).ToList();
        return [.. Difference(specification, booked, [new ChosenItem(more, Likelihood.Certain)], option: null, prices).OrderBy(l => l.Charge)];
    }

    /// <summary>What <paramref name="more"/> adds to <paramref name="before"/>.</summary>
    private static IEnumerable<ProposedLine> Difference(
        EngineSpecification specification, IReadOnlyList<ChosenItem> before, IReadOnlyList<ChosenItem> more, string? option, PriceBook prices)
    {
        var all = before.Concat(more).Select(i => i with { Likelihood = Likelihood.Certain }).ToList();
        var had = VisitDuration.Of(specification, [.. before.Select(i => i with { Likelihood = Likelihood.Certain })]).Lines
            .Select(SourceOf).ToHashSet(StringComparer.Ordinal);
        var labour = VisitDuration.Of(specification, all).Lines
            .Where(l => l.Minutes > 0 && !had.Contains(SourceOf(l)))
            .Select(l => Labour(l, option, prices));

        var kitBefore = Kit.Of(specification, before.Select(i => i.Item), [], prices.Known).Lines.ToDictionary(l => l.PartCode, StringComparer.Ordinal);
        var parts = new List<ProposedLine>();
        foreach (var line in Kit.Of(specification, all.Select(i => i.Item), [], prices.Known).Lines)
        {
            var earlier = kitBefore.GetValueOrDefault(line.PartCode);
            parts.AddRange(Part(line.PartCode, line.Needed - (earlier?.Needed ?? 0), EstimateCharge.Always, option, prices));
            parts.AddRange(Part(line.PartCode, line.HaveReady - (earlier?.HaveReady ?? 0), EstimateCharge.IfUsed, option, prices));
        }

        return labour.Concat(parts);
    }

    private static string SourceOf(LabourLine line) => $"{(line.IsAccess ? "access" : "item")}:{line.Code}";

    private static ProposedLine Labour(LabourLine line, string? option, PriceBook prices) => new(
        SourceOf(line), EstimateLineKind.Labour, EstimateCharge.Always, option, line.Name, null, line.Minutes, EstimateUnit.Minute,
        prices.LabourPerHour, null, prices.UsualTax,
        prices.LabourPerHour is null ? $"No price is known of {line.Name}: the workshop's labour rate is not set."
        : prices.UsualTax is null ? $"No tax rate is known of {line.Name}: the workshop's usual one is not set."
        : null);

    private static IEnumerable<ProposedLine> Part(
        string code, decimal quantity, EstimateCharge charge, string? option, PriceBook prices)
    {
        var part = prices.PartOf(code);
        return quantity <= 0
            ? []
            :
            [
                new ProposedLine(
                    $"part:{code}", EstimateLineKind.Part, charge, option, part.Name, code, quantity, part.CountedIn, part.NetPrice, part.Cost, part.Tax,
                    part.NetPrice is null ? $"No price is known of {part.Name} ({code})."
                    : part.Tax is null ? $"No tax rate is known of {part.Name} ({code})."
                    : null),
            ];
    }
}
