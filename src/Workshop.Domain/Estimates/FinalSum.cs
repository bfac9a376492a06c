using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;

namespace Workshop.Domain.Estimates;

/// <summary>A part that a visit used.</summary>
/// <param name="Quantity">In the part's unit.</param>
public sealed record UsedPart(string Code, decimal Quantity);

/// <summary>
/// What a visit came to: the labour of what was done and the parts that were used, at agreed prices where there are any. It is a
/// comparison with what was agreed, no bill.
/// </summary>
/// <param name="WithoutPrice">What was used or done and has no price, in words; the sums lack it.</param>
public sealed record FinalSum(EstimateSums Sums, IReadOnlyList<string> WithoutPrice)
{
    /// <param name="specification">Holds the items.</param>
    /// <param name="done">Items that were done; of others nothing is charged.</param>
    /// <param name="used">Parts that left the stores for the visit and did not come back.</param>
    /// <param name="agreed">Lines that were agreed, for their prices and typed lines; empty where nothing was.</param>
    /// <param name="prices">Of the day, for what was not agreed.</param>
    public static FinalSum Of(
        EngineSpecification specification, IEnumerable<ServiceItem> done, IEnumerable<UsedPart> used, IReadOnlyList<AgreedLine> agreed, PriceBook prices)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(agreed);
        ArgumentNullException.ThrowIfNull(prices);
        var standing = agreed.Where(l => !l.Dropped).ToLookup(l => l.Subject, l => l.Priced, StringComparer.Ordinal);
        var dropped = agreed.Where(l => l.Dropped).Select(l => l.Subject).ToHashSet(StringComparer.Ordinal);
        var labour = VisitDuration.Of(specification, [.. done.Select(i => new ChosenItem(i, Likelihood.Certain))]).Lines.Where(l => l.Minutes > 0)
            .Select(l => (Source: $"{(l.IsAccess ? "access" : "item")}:{l.Code}", l.Name, Today: prices is { LabourPerHour: { } rate, UsualTax: { } tax }
                ? new PricedQuantity(l.Minutes, EstimateUnit.Minute, rate, null, tax.Code, tax.Percent) : null, Quantity: (decimal)l.Minutes));
        var parts = used.Where(p => p.Quantity != 0)
            .Select(p => (Source: $"part:{p.Code}", prices.PartOf(p.Code).Name, Today: prices.PartOf(p.Code).Of(p.Quantity), p.Quantity));

        var (lines, missing) = (new List<PricedQuantity>(), new List<string>());
        foreach (var (source, name, today, quantity) in labour.Concat(parts))
        {
            if (dropped.Contains(source) && !standing.Contains(source))
            {
                continue;
            }

            if ((standing[source].LastOrDefault() is { } known ? known with { Quantity = quantity } : today) is { } line)
            {
                lines.Add(line);
            }
            else
            {
                missing.Add(name);
            }
        }

        // A part that a person added is charged when it was used, as every other.
        lines.AddRange(agreed.Where(l => l is { IsTyped: true, Dropped: false, PartCode: null }).Select(l => l.Priced));
        return new FinalSum(EstimateSums.Of(lines), [.. missing.Distinct(StringComparer.Ordinal)]);
    }
}
