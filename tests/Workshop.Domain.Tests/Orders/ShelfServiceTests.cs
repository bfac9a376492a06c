using System.Globalization;
using CsCheck;
using Workshop.Domain.Orders;
using Workshop.Domain.Statistics;
using Workshop.Domain.Stores;
using Workshop.Domain.Tests.Statistics;

namespace Workshop.Domain.Tests.Orders;

public class ShelfServiceTests
{
    /// <summary>
    /// Snyder and Shen, example 5.8: the cost of (r, Q) is that of the orders, of what lies there and of what is waited for, so it checks the means
    /// of both.
    /// </summary>
    [Fact]
    public void What_lies_there_and_what_is_waited_for_cost_what_is_published() => Assert.All(
        CheckValues.Lines("inventory/ordering-policies.csv").Skip(1).Where(l => l.Length > 0).Select(l => l.Split(',')), row =>
        {
            var (rate, lead, order, left, missing) = (Number(row[1]), Number(row[2]), Number(row[3]), Number(row[4]), Number(row[5]));
            var quantity = (int)Number(row[7]);
            var service = ShelfService.Of(new PoissonLaw(rate * lead), (int)Number(row[6]), quantity);
            DigitsOfAgreement.AtLeast(12, (order * rate / quantity) + (left * service.There) + (missing * service.Waiting), Number(row[8]), row[0]);
        });

    /// <summary>One piece is met at once when the stock is above zero, and it is so with the mean of the chances of all positions.</summary>
    [Fact]
    public void The_fill_rate_of_chance_demand_is_the_chance_that_something_lies_there() =>
        Gen.Select(Gen.Double[0.1, 20], Gen.Int[-3, 30], Gen.Int[1, 20]).Sample((mean, reorderAt, quantity) =>
        {
            var law = new PoissonLaw(mean);
            var service = ShelfService.Of(law, reorderAt, quantity);
            Assert.Equal(Enumerable.Range(reorderAt + 1, quantity).Average(position => law.Cumulative(position - 1)), service.FillRate, 1e-10);
            Assert.Equal((1 - service.FillRate) * quantity, service.ShortPerCycle, 1e-9);
            Assert.True(ShelfService.Of(law, reorderAt + 1, quantity).FillRate >= service.FillRate - 1e-12);
        });

    [Fact]
    public void A_large_count_and_the_normal_law_say_nearly_the_same()
    {
        var counted = ShelfService.Of(new PoissonLaw(400), 410, 50);
        var normal = ShelfService.Of(new NormalLaw(400, 20), 410, 50);

        Assert.Equal(counted.FillRate, normal.FillRate, 0.01);
        Assert.Equal(counted.There, normal.There, 0.5);
    }

    [Fact]
    public void Of_fluids_it_is_said_in_millilitres_and_what_is_booked_is_kept_apart()
    {
        var pieces = new LeadTimeDemand(7, 0, 5, 5, PartUnit.Piece).Service(7, 4)!;
        var fluid = new LeadTimeDemand(7, 250, 500, 50_000, PartUnit.Millilitre).Service(950, 400)!;

        Assert.Equal((pieces.FillRate, pieces.ShortPerCycle * 100), (fluid.FillRate, fluid.ShortPerCycle));
        Assert.Null(new LeadTimeDemand(7, 3, 0, 0, PartUnit.Piece).Service(3, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShelfService.Of(new PoissonLaw(1), 1, 0));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
