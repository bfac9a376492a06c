using System.Globalization;
using CsCheck;
using Workshop.Domain.Stores;
using Workshop.Domain.Tests.Statistics;

namespace Workshop.Domain.Tests.Orders;

public class OrderingPolicyTests
{
    [Fact]
    public void Costs_of_reorder_point_and_quantity_are_the_published_ones() => Assert.All(
        CheckValues.Lines("inventory/ordering-policies.csv").Skip(1).Where(l => l.Length > 0).Select(l => l.Split(',')), row =>
        {
            var costs = new OrderingCosts(Number(row[1]), Number(row[2]), Number(row[3]), Number(row[4]), Number(row[5]));
            var (reorderAt, quantity) = ((int)Number(row[6]), (int)Number(row[7]));
            DigitsOfAgreement.AtLeast(12, costs.Of(reorderAt, quantity), Number(row[8]), row[0]);
            if (row[9] == "yes")
            {
                var best = costs.Best();
                Assert.Equal((reorderAt, quantity), (best.ReorderAt, best.Quantity));
                DigitsOfAgreement.AtLeast(12, best.Cost, Number(row[8]), row[0]);
            }
        });

    [Fact]
    public void No_pair_near_or_far_costs_less_than_the_best() =>
        Gen.Select(Gen.Double[0.05, 4], Gen.Double[0, 5], Gen.Double[0, 200], Gen.Double[0.5, 30], Gen.Double[1, 200]).Sample((rate, lead, order, left, missing) =>
        {
            var costs = new OrderingCosts(rate, lead, order, left, missing);
            var best = costs.Best();
            Assert.Equal(costs.Of(best.ReorderAt, best.Quantity), best.Cost, 1e-9 * (1 + best.Cost));
            return Enumerable.Range(-10, 50).All(r => Enumerable.Range(1, 40).All(q => costs.Of(r, q) >= best.Cost * (1 - 1e-9)));
        }, iter: 15);

    /// <summary>With no cost of ordering, one piece replaces one: the newsvendor's stock (Snyder and Shen, section 4.3).</summary>
    [Fact]
    public void Where_ordering_costs_nothing_each_piece_is_replaced_at_once() =>
        Gen.Select(Gen.Double[0.1, 5], Gen.Double[0.1, 5], Gen.Double[1, 50]).Sample((rate, lead, missing) =>
        {
            var best = new OrderingCosts(rate, lead, 0, 1, missing).Best();
            var newsvendor = Newsvendor.Best(new Domain.Statistics.PoissonLaw(rate * lead), 1, missing);
            return best.Quantity == 1 && best.ReorderAt + 1 == newsvendor.Stock && Math.Abs(best.Cost - newsvendor.Cost) < 1e-9 * (1 + best.Cost);
        });

    [Fact]
    public void A_quantity_of_nothing_and_costs_below_zero_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new OrderingCosts(1, 1, 1, 1, 1).Of(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new OrderingCosts(0, 1, 1, 1, 1).Best());
        Assert.Throws<ArgumentOutOfRangeException>(() => new OrderingCosts(1, 1, -1, 1, 1).Best());
        Assert.Throws<ArgumentOutOfRangeException>(() => new OrderingCosts(1, 1, 1, 0, 1).Best());
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
