using Workshop.Domain.Statistics;

namespace Workshop.Domain.Orders;

/// <summary>
/// What a fixed reorder point r and order quantity Q do in the long run, where what is missing is waited for: after an order the position
/// is as often r + 1 as r + 2 and so on to r + Q. Exact where demand comes piece by piece by chance (Poisson), near where it scatters more
/// (Snyder and Shen, Fundamentals of Supply Chain Theory, 2nd ed., Wiley 2019, section 5.4).
/// </summary>
/// <param name="FillRate">The share of what is asked for that is met from the shelf at once, 0 to 1.</param>
/// <param name="ShortPerCycle">How much is expected to be asked for and not there, from one order to the next.</param>
/// <param name="Waiting">How much is waited for at a moment, as a mean.</param>
/// <param name="There">How much lies there at a moment, as a mean.</param>
public sealed record ShelfService(double FillRate, double ShortPerCycle, double Waiting, double There)
{
    /// <summary>Of a demand that is counted.</summary>
    /// <param name="inLeadTime">What is asked for from order to delivery.</param>
    /// <param name="reorderAt">r; what is there and on order when the next order goes out.</param>
    /// <param name="quantity">Q, 1 or above.</param>
    public static ShelfService Of(CountLaw inLeadTime, int reorderAt, int quantity)
    {
        ArgumentNullException.ThrowIfNull(inLeadTime);
        ArgumentOutOfRangeException.ThrowIfLessThan(quantity, 1);

        // The loss function falls by the chance of running out: n(y + 1) = n(y) - P(demand > y).
        var missing = new double[quantity + 1];
        missing[0] = inLeadTime.ExpectedMissing(Math.Max(reorderAt, 0)) + Math.Max(-reorderAt, 0);
        var covered = inLeadTime.Cumulative(reorderAt);
        for (var i = 1; i <= quantity; i++)
        {
            missing[i] = Math.Max(missing[i - 1] - (1 - covered), 0);
            covered = Math.Min(covered + inLeadTime.Probability(reorderAt + i), 1);
        }

        return Of(missing, inLeadTime.Mean, reorderAt);
    }

    /// <summary>Of so large a demand that a count would be no different.</summary>
    /// <param name="inLeadTime">What is asked for from order to delivery.</param>
    /// <param name="reorderAt">r; what is there and on order when the next order goes out.</param>
    /// <param name="quantity">Q, 1 or above.</param>
    public static ShelfService Of(NormalLaw inLeadTime, int reorderAt, int quantity)
    {
        ArgumentNullException.ThrowIfNull(inLeadTime);
        ArgumentOutOfRangeException.ThrowIfLessThan(quantity, 1);
        return Of([.. Enumerable.Range(reorderAt, quantity + 1).Select(y => inLeadTime.ExpectedMissing(y))], inLeadTime.Mean, reorderAt);
    }

    private static ShelfService Of(double[] missing, double mean, int reorderAt)
    {
        var quantity = missing.Length - 1;
        var (perCycle, waiting) = (missing[0] - missing[quantity], missing.Skip(1).Sum() / quantity);
        return new ShelfService(
            Math.Clamp(1 - (perCycle / quantity), 0, 1), perCycle, waiting, Math.Max(reorderAt + ((quantity + 1) / 2.0) - mean + waiting, 0));
    }
}
