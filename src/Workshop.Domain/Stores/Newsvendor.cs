using Workshop.Domain.Statistics;

namespace Workshop.Domain.Stores;

/// <summary>How much to hold for a season when what is left costs and what is missing costs more.</summary>
/// <param name="Stock">What to hold.</param>
/// <param name="Cost">What is then to be expected, in the unit of the costs.</param>
public sealed record BestStock(int Stock, double Cost);

/// <summary>The same of what comes in any amount.</summary>
/// <param name="Stock">What to hold.</param>
/// <param name="Cost">What is then to be expected, in the unit of the costs.</param>
public sealed record BestAmount(double Stock, double Cost);

/// <summary>
/// The newsvendor's rule: hold the smallest stock that is enough with probability missing / (missing + left) (Snyder and
/// Shen, Fundamentals of Supply Chain Theory, 2nd ed., Wiley 2019, section 4.3).
/// </summary>
public static class Newsvendor
{
    /// <summary>The service level that the two costs ask for.</summary>
    /// <param name="leftCost">Of one piece that is left over, above 0.</param>
    /// <param name="missingCost">Of one piece that is missing, above 0.</param>
    public static double ServiceLevel(double leftCost, double missingCost)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(leftCost);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(missingCost);
        return missingCost / (missingCost + leftCost);
    }

    /// <summary>The best stock and its expected cost.</summary>
    public static BestStock Best(CountLaw demand, double leftCost, double missingCost)
    {
        ArgumentNullException.ThrowIfNull(demand);
        var stock = demand.SmallestCovering(ServiceLevel(leftCost, missingCost));
        return new BestStock(stock, Cost(demand, stock, leftCost, missingCost));
    }

    /// <summary>The expected cost of holding so many.</summary>
    public static double Cost(CountLaw demand, int stock, double leftCost, double missingCost)
    {
        ArgumentNullException.ThrowIfNull(demand);
        return (leftCost * demand.ExpectedLeft(stock)) + (missingCost * demand.ExpectedMissing(stock));
    }

    /// <summary>The best amount and its expected cost.</summary>
    public static BestAmount Best(AmountLaw demand, double leftCost, double missingCost)
    {
        ArgumentNullException.ThrowIfNull(demand);
        var stock = demand.Quantile(ServiceLevel(leftCost, missingCost));
        return new BestAmount(stock, Cost(demand, stock, leftCost, missingCost));
    }

    /// <summary>The expected cost of holding so much.</summary>
    public static double Cost(AmountLaw demand, double stock, double leftCost, double missingCost)
    {
        ArgumentNullException.ThrowIfNull(demand);
        return (leftCost * demand.ExpectedLeft(stock)) + (missingCost * demand.ExpectedMissing(stock));
    }
}
