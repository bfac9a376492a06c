using Workshop.Domain.Statistics;

namespace Workshop.Domain.Stores;

/// <summary>When what is there and on order falls to <paramref name="ReorderAt"/>, order <paramref name="Quantity"/>.</summary>
/// <param name="ReorderAt">r; below zero where waiting is cheap.</param>
/// <param name="Quantity">Q, 1 or above.</param>
/// <param name="Cost">Expected in the long run, in the costs' unit for one unit of time.</param>
public sealed record OrderingPolicy(int ReorderAt, int Quantity, double Cost);

/// <summary>
/// What a fixed reorder point and order quantity cost exactly when demand comes piece by piece by chance (Poisson), a lead time
/// passes before each delivery, and what is missing is waited for: after an order the position is as often r + 1 as r + 2 and so on
/// to r + Q (Snyder and Shen, Fundamentals of Supply Chain Theory, 2nd ed., Wiley 2019, section 5.4; the best pair by the search of
/// Federgruen and Zheng, Operations Research 40 (1992) 808-813, named from memory).
/// </summary>
/// <param name="Rate">Pieces asked for in a unit of time, above 0.</param>
/// <param name="LeadTime">From order to delivery, in the same unit, 0 or above.</param>
/// <param name="OrderCost">Of one order, 0 or above.</param>
/// <param name="LeftCost">Of one piece that lies there for a unit of time, above 0.</param>
/// <param name="MissingCost">Of one piece that is waited for a unit of time, above 0.</param>
public sealed record OrderingCosts(double Rate, double LeadTime, double OrderCost, double LeftCost, double MissingCost)
{
    private PoissonLaw InLeadTime => new(Rate * LeadTime);

    /// <summary>The expected cost of a pair for one unit of time.</summary>
    /// <param name="reorderAt">r.</param>
    /// <param name="quantity">Q, 1 or above.</param>
    public double Of(int reorderAt, int quantity)
    {
        Check();
        ArgumentOutOfRangeException.ThrowIfLessThan(quantity, 1);
        var law = InLeadTime;
        var sum = Enumerable.Range(reorderAt + 1, quantity).Sum(position => Holding(law, position));
        return ((OrderCost * Rate) + sum) / quantity;
    }

    /// <summary>The pair that costs least.</summary>
    public OrderingPolicy Best()
    {
        Check();
        var law = InLeadTime;

        // The cost of a position is convex: grow the stretch of positions to its cheaper side as long as that lowers the mean.
        var best = law.SmallestCovering(Newsvendor.ServiceLevel(LeftCost, MissingCost));
        var (reorderAt, quantity, sum) = (best - 1, 1, (OrderCost * Rate) + Holding(law, best));
        while (true)
        {
            var (below, above) = (Holding(law, reorderAt), Holding(law, reorderAt + quantity + 1));
            if (Math.Min(below, above) >= sum / quantity)
            {
                return new OrderingPolicy(reorderAt, quantity, sum / quantity);
            }

            sum += Math.Min(below, above);
            reorderAt -= below <= above ? 1 : 0;
            quantity++;
        }
    }

    private double Holding(PoissonLaw law, int position) => Newsvendor.Cost(law, position, LeftCost, MissingCost);

    private void Check()
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(Rate);
        ArgumentOutOfRangeException.ThrowIfNegative(LeadTime);
        ArgumentOutOfRangeException.ThrowIfNegative(OrderCost);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(LeftCost);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(MissingCost);
    }
}
