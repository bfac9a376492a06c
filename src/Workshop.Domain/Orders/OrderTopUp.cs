namespace Workshop.Domain.Orders;

/// <summary>A part that an order below the supplier's smallest could take along.</summary>
/// <param name="Quantity">Whole packages, up to what the order is to last for.</param>
/// <param name="NetCost">Of all of it.</param>
public sealed record Addition(OrderProposal Of, decimal Quantity, decimal NetCost);

/// <summary>What could be added to an order that is below the supplier's smallest.</summary>
public static class OrderTopUp
{
    /// <summary>
    /// Parts of the same supplier that will be wanted soonest, one after the other, until the sum is reached; fewer where no more are
    /// kept. Whatever is in the order already is left alone.
    /// </summary>
    /// <param name="proposals">Of all that the supplier sells.</param>
    /// <param name="smallest">The smallest order, before tax.</param>
    public static IReadOnlyList<Addition> Suggest(IReadOnlyCollection<OrderProposal> proposals, decimal smallest)
    {
        ArgumentNullException.ThrowIfNull(proposals);
        var sum = proposals.Sum(p => p.NetCost ?? 0);
        var added = new List<Addition>();
        foreach (var next in proposals.Where(p => p.Quantity == 0 && p.DaysLeft is not null && p.Of.Supply.UnitCost > 0 && !p.Of.Part.Discontinued)
            .OrderBy(p => p.DaysLeft).ThenBy(p => p.Of.Part.Code, StringComparer.Ordinal))
        {
            if (sum >= smallest)
            {
                break;
            }

            var missing = Math.Max(next.Missing, 1);
            var quantity = PackageSizes.RoundUp(missing, next.Of.Supply.PackQuantity, next.Of.Supply.SmallestQuantity);
            var cost = OrderSums.OfLine(quantity, next.Of.Supply.UnitCost)!.Value;
            added.Add(new Addition(next, quantity, cost));
            sum += cost;
        }

        return added;
    }
}
