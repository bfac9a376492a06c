using System.Globalization;
using CsCheck;
using NodaTime;
using Workshop.Domain.Kits;
using Workshop.Domain.Orders;
using Workshop.Domain.Statistics;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Tests.Orders;

public class OrderProposalTests
{
    private static readonly LocalDate Today = new(2026, 3, 2);
    private static readonly NoticeOfVisits NothingBooked = new([]);

    /// <summary>R 4.2.2: <c>qpois(c(.90, .95, .99), c(.5, 1, 2, 3.5, 5, 10))</c>; the same rows that the law itself is checked with.</summary>
    [Fact]
    public void The_reorder_point_of_an_even_demand_is_the_quantile_of_Poisson()
    {
        var rows = CheckValues.Lines("inventory/levels.csv").Where(l => l.StartsWith("poisson", StringComparison.Ordinal)).Select(l => l.Split(',')).ToList();
        Assert.Equal(18, rows.Count);
        Assert.All(rows, row =>
        {
            var (mean, level) = (double.Parse(row[1], CultureInfo.InvariantCulture), double.Parse(row[3], CultureInfo.InvariantCulture));
            var demand = new LeadTimeDemand(7, 0, mean, mean, PartUnit.Piece);
            Assert.Equal((DemandLaw.Poisson, decimal.Parse(row[4], CultureInfo.InvariantCulture)), (demand.Law, demand.SmallestCovering(level)));
        });
    }

    /// <summary>R 4.2.2: <c>qnbinom(p, size, prob)</c>, given by mean size (1 - prob) / prob and variance mean / prob.</summary>
    [Fact]
    public void The_reorder_point_of_a_lumpy_demand_is_the_quantile_of_the_negative_binomial() => Assert.All(
        CheckValues.Lines("inventory/levels.csv").Where(l => l.StartsWith("negative", StringComparison.Ordinal)).Select(l => l.Split(',')), row =>
        {
            var (size, chance) = (double.Parse(row[1], CultureInfo.InvariantCulture), double.Parse(row[2], CultureInfo.InvariantCulture));
            var mean = size * (1 - chance) / chance;
            var demand = new LeadTimeDemand(7, 3, mean, mean / chance, PartUnit.Piece);
            Assert.Equal(DemandLaw.NegativeBinomial, demand.Law);
            Assert.Equal(3 + decimal.Parse(row[4], CultureInfo.InvariantCulture), demand.SmallestCovering(double.Parse(row[3], CultureInfo.InvariantCulture)));
        });

    [Fact]
    public void So_large_a_demand_that_pieces_do_not_count_is_normal()
    {
        var demand = new LeadTimeDemand(6, 0, 20_000, 90_000, PartUnit.Piece);

        Assert.Equal((DemandLaw.Normal, 20_494m), (demand.Law, demand.SmallestCovering(0.95)));
    }

    [Fact]
    public void Fluids_are_counted_in_steps()
    {
        var demand = LeadTimeDemand.Of(new IssueHistory([700, 700, 700, 700]), NothingBooked, 5, 0, 250, PartUnit.Millilitre);

        Assert.Equal((500, 0), (demand.Expected, demand.Variance));
        Assert.Equal(250 + (100 * new PoissonLaw(5).SmallestCovering(0.9)), demand.SmallestCovering(0.9));
    }

    [Fact]
    public void A_delivery_that_scatters_asks_for_more()
    {
        var issues = new IssueHistory([7, 14, 7, 0, 7, 14, 7, 0]);
        decimal At(double scatter) => LeadTimeDemand.Of(issues, NothingBooked, 6, scatter, 0, PartUnit.Piece).SmallestCovering(0.95);

        Assert.True(At(3) > At(0));
        Assert.Equal(DemandOverTime.Of(1, issues.DayVariance, 6, 3).Variance, LeadTimeDemand.Of(issues, NothingBooked, 6, 3, 0, PartUnit.Piece).Variance);
    }

    [Fact]
    public void Of_what_is_ahead_only_what_is_not_booked_yet_is_by_chance()
    {
        var aWeekBefore = new NoticeOfVisits([.. Enumerable.Repeat(7, 30)]);
        var notLong = new NoticeOfVisits([.. Enumerable.Repeat(0, 15), .. Enumerable.Repeat(10, 15)]);

        Assert.Equal((0, 3), (aWeekBefore.DaysNotYetBooked(7), aWeekBefore.DaysNotYetBooked(10)));
        Assert.Equal((5, 6), (notLong.DaysNotYetBooked(10), notLong.DaysNotYetBooked(11)));
        Assert.Equal(4, new NoticeOfVisits([9, 9, 9]).DaysNotYetBooked(4));
    }

    [Fact]
    public void Weeks_without_enough_history_tell_no_rate_and_say_so()
    {
        var proposal = Propose(onHand: 0, issues: [3, 3, 3], booked: [(2, 4, 0)]);

        Assert.Equal((4m, 4m, 4m), (proposal.ReorderPoint, proposal.OrderUpTo, proposal.Quantity));
        Assert.Contains("booked visits want 4; 3 weeks of issues tell no rate yet, 4 would", proposal.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_visits_are_booked_longer_ahead_than_a_delivery_takes_nothing_beyond_them_is_expected()
    {
        var proposal = OrderProposal.For(
            Propose(onHand: 1, issues: [1, 2, 1, 2], booked: [(2, 1, 0)]).Of, new NoticeOfVisits([.. Enumerable.Repeat(40, 30)]), new OrderDays(Today, Today.PlusDays(7), Today.PlusDays(37)));

        Assert.Equal((DemandLaw.BookedOnly, 1m, 0m), (proposal.InLeadTime.Law, proposal.ReorderPoint, proposal.Quantity));
        Assert.Contains("booked visits want 1; no more is to be expected, as visits are booked longer ahead than that (6 went out in 4 weeks)", proposal.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Why_is_said_with_every_figure()
    {
        var proposal = Propose(onHand: 2, reserved: 1, onOrder: 1, issues: [0, 3, 1, 2, 0, 2, 1, 3], booked: [(3, 2, 0)], pack: 5);

        Assert.Equal(
            "Ordered today it can be used from 2026-03-09. Until then booked visits want 2 and about 1.5 more is to be expected, as 12 went out in 8 weeks "
            + "(Poisson: the weeks scatter as chance does). Enough with 95 %: 6. On hand 2, of which 1 reserved; on order 1. "
            + "To last until 2026-04-08 there should be 15: 12 to order, in packages of 5: 15.",
            proposal.Why);
    }

    [Fact]
    public void Enough_is_left_alone()
    {
        var proposal = Propose(onHand: 30, issues: [1, 1, 1, 1]);

        Assert.Equal(0, proposal.Quantity);
        Assert.EndsWith("That is enough.", proposal.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void What_expires_before_it_is_asked_for_is_ordered_anew_and_said()
    {
        var proposal = OrderProposal.For(
            Propose(onHand: 12, issues: [7, 7, 7, 7]).Of with { Lots = [new LotQuantity(Today.PlusDays(4), 10), new LotQuantity(null, 2)] },
            NothingBooked, new OrderDays(Today, Today.PlusDays(7), Today.PlusDays(37)));

        // One a day goes out: four of the ten in four days, six are left when they end.
        Assert.Equal((6m, 6m), (proposal.UnusedInLeadTime, proposal.UnusedUntilEnd));
        Assert.Equal(proposal.OrderUpTo - 6, proposal.Quantity);
        Assert.Contains(
            "Of what is on hand 6 will expire before anybody asks for it and is not counted (10 to be used by 2026-03-06).", proposal.Why, StringComparison.Ordinal);
        Assert.Equal(0, Propose(onHand: 50, issues: [7, 7, 7, 7]).Quantity);
    }

    [Fact]
    public void What_is_left_of_lots_at_their_end_is_no_more_than_there_was_and_less_the_more_is_asked_for() => Gen.Select(
        Gen.Select(Gen.Int[0, 20], Gen.Int[0, 9]).Array[0, 5], Gen.Int[0, 4], Gen.Int[0, 25]).Sample((lots, perDay, until) =>
        {
            LotQuantity[] there = [.. lots.Select(l => new LotQuantity(Today.PlusDays(l.Item1), l.Item2)), new LotQuantity(null, 3)];
            decimal Unused(int rate) => UnusedLots.By(Today.PlusDays(until), there, day => rate * (Period.DaysBetween(Today, day) + 1));

            var ending = there.Where(l => !l.LastsUntil(Today.PlusDays(until))).Sum(l => l.Quantity);
            Assert.Equal(ending, Unused(0));
            Assert.InRange(Unused(perDay), Math.Max(0, ending - (perDay * (until + 1))), ending);
            Assert.True(Unused(perDay + 1) <= Unused(perDay));
        });

    [Fact]
    public void A_part_that_is_not_kept_is_ordered_for_visits_only()
    {
        var without = Propose(onHand: 0, issues: [5, 5, 5, 5], stocked: false);
        var booked = Propose(onHand: 1, issues: [5, 5, 5, 5], stocked: false, booked: [(20, 3, 0)]);

        Assert.Equal((0m, 2m), (without.Quantity, booked.Quantity));
        Assert.Contains("ordered for visits only", booked.Why, StringComparison.Ordinal);
        Assert.Contains("Visits that are booked until 2026-04-08 need more.", booked.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reorder_point_by_hand_stands_in_place_of_the_reckoned_one()
    {
        var proposal = Propose(onHand: 8, issues: [0, 0, 0, 0], byHand: 8);

        Assert.Equal((8m, 9m, 1m), (proposal.ReorderPoint, proposal.OrderUpTo, proposal.Quantity));
        Assert.Contains("set by hand: 8.", proposal.Why, StringComparison.Ordinal);
        Assert.Equal(0, Propose(onHand: 9, issues: [0, 0, 0, 0], byHand: 8).Quantity);
    }

    [Fact]
    public void What_only_lies_ready_is_held_once_however_many_visits_want_it_ready()
    {
        var demand = Propose(onHand: 0, issues: [], booked: [(1, 0, 2), (2, 1, 3)]).InLeadTime;

        Assert.Equal(1 + 3, demand.Booked);
    }

    /// <summary>
    /// With what is ordered there is enough until the end with the service level's probability, no package less would do, and the
    /// reorder point is the smallest stock of which the same is true until the delivery.
    /// </summary>
    [Fact]
    public void An_order_is_enough_and_no_package_more_than_enough() => Gen.Select(
        Gen.Int[0, 20], Gen.Int[0, 10], Gen.Int[0, 5].Array[0, 30], Gen.Select(Gen.Int[0, 40], Gen.Int[0, 3], Gen.Int[0, 2]).Array[0, 5], Gen.Int[1, 12],
        Gen.Double[0.5, 0.999]).Sample((onHand, onOrder, issues, booked, pack, level) =>
        {
            var proposal = Propose(onHand, 0, onOrder, [.. issues.Select(i => (decimal)i)], [.. booked.Select(b => (b.Item1, (decimal)b.Item2, (decimal)b.Item3))], pack, level: level);
            var position = proposal.Of.Position;

            Assert.Equal(0, proposal.Quantity % pack);
            Assert.True(proposal.OrderUpTo >= proposal.ReorderPoint);
            Assert.True(proposal.Quantity == 0 || (position + proposal.Quantity >= proposal.OrderUpTo && position + proposal.Quantity - pack < proposal.OrderUpTo));
            Assert.True(proposal.Quantity > 0 || position >= Math.Min(proposal.ReorderPoint, proposal.OrderUpTo));
            var (demand, stock) = (proposal.InLeadTime, (int)(proposal.ReorderPoint - proposal.InLeadTime.Booked));
            if (demand.Law != DemandLaw.BookedOnly)
            {
                var law = CountLaw.WithMoments(demand.Expected, demand.Variance);
                Assert.True(law.Cumulative(stock) >= level - 1e-9 && (stock == 0 || law.Cumulative(stock - 1) < level));
            }
        }, iter: 300);

    [Fact]
    public void Wanting_to_be_surer_never_lowers_the_reorder_point() => Gen.Select(
        Gen.Int[0, 9].Array[4, 30], Gen.Double[0.5, 0.99], Gen.Double[0, 0.009]).Sample((issues, level, more) =>
            Propose(0, issues: [.. issues.Select(i => (decimal)i)], level: level + more).ReorderPoint >= Propose(0, issues: [.. issues.Select(i => (decimal)i)], level: level).ReorderPoint);

    [Theory]
    [InlineData(0, 5, null, 0)]
    [InlineData(1, 5, null, 5)]
    [InlineData(5, 5, null, 5)]
    [InlineData(6, 5, null, 10)]
    [InlineData(3, 5, 12, 15)]
    [InlineData(2500, 1000, null, 3000)]
    public void Only_whole_packages_are_ordered_and_no_fewer_than_are_sold(int wanted, int pack, int? least, int ordered) =>
        Assert.Equal(ordered, PackageSizes.RoundUp(wanted, pack, least));

    [Fact]
    public void A_quantity_between_packages_is_refused_with_the_next_that_can_be_had()
    {
        var supply = new PartSupply { Id = Guid.CreateVersion7(), PartId = Guid.CreateVersion7(), SupplierId = Guid.CreateVersion7(), PackQuantity = 10, SmallestQuantity = 20 };

        Assert.Equal(
            "quantity is 13: Ring is sold in packages of 10, at least 20 at once; 20 is the next that can be had.",
            PackageSizes.Refuse("quantity", Part(true, null), 13, supply)?.Sentence);
        Assert.Null(PackageSizes.Refuse("quantity", Part(true, null), 30, supply));
        Assert.Equal("quantity is 1.5: Ring comes in whole pieces.", PackageSizes.Refuse("quantity", Part(true, null), 1.5m, null)?.Sentence);
    }

    [Fact]
    public void Below_the_smallest_order_what_is_wanted_soonest_is_added_until_it_is_reached()
    {
        OrderProposal[] sold =
        [
            Propose(onHand: 0, issues: [2, 2, 2, 2], cost: 2, code: "now"),
            Propose(onHand: 30, issues: [7, 7, 7, 7], cost: 1, code: "soon"),
            Propose(onHand: 90, issues: [7, 7, 7, 7], cost: 1, code: "later"),
            Propose(onHand: 40, issues: [0, 0, 0, 0], cost: 1, code: "never"),
        ];
        var sum = sold[0].NetCost!.Value;

        Assert.Equal(["soon"], OrderTopUp.Suggest(sold, sum + 1).Select(a => a.Of.Of.Part.Code));
        Assert.Equal(["soon", "later"], OrderTopUp.Suggest(sold, sum + 1_000).Select(a => a.Of.Of.Part.Code));
        Assert.Empty(OrderTopUp.Suggest(sold, sum));
        Assert.All(OrderTopUp.Suggest(sold, sum + 1_000), a => Assert.Equal(a.NetCost, a.Quantity * 1));
    }

    [Theory]
    [InlineData(3, 0.335, 1.01)]
    [InlineData(1, 0.125, 0.13)]
    [InlineData(1000, 0.0095, 9.5)]
    public void A_line_is_rounded_half_away_from_zero(decimal quantity, decimal cost, decimal sum) => Assert.Equal(sum, OrderSums.OfLine(quantity, cost));

    private static OrderProposal Propose(
        decimal onHand, decimal reserved = 0, decimal onOrder = 0, decimal[]? issues = null, (int Day, decimal Needed, decimal Ready)[]? booked = null,
        int pack = 1, bool stocked = true, decimal? byHand = null, double level = 0.95, decimal? cost = null, string code = "ring") =>
        OrderProposal.For(
            new PartToOrder(
                Part(stocked, byHand, code),
                new PartSupply { Id = Guid.CreateVersion7(), PartId = Guid.CreateVersion7(), SupplierId = Guid.CreateVersion7(), PackQuantity = pack, UnitCost = cost },
                onHand, reserved, onOrder, [.. (booked ?? []).Select((b, i) => new BookedNeed(i + 1, Instant.MinValue, Today.PlusDays(b.Day), b.Needed, b.Ready, []))],
                new IssueHistory(issues ?? []), level, 6, 0),
            NothingBooked, new OrderDays(Today, Today.PlusDays(7), Today.PlusDays(37)));

    private static Part Part(bool stocked, decimal? byHand, string code = "ring") => new()
    {
        Id = Guid.CreateVersion7(), Code = code, Name = "Ring", Kind = PartKind.SealingRing, Unit = PartUnit.Piece, Stocked = stocked, ReorderPoint = byHand,
    };
}
