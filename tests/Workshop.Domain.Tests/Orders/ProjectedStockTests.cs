using CsCheck;
using NodaTime;
using Workshop.Domain.Kits;
using Workshop.Domain.Orders;

namespace Workshop.Domain.Tests.Orders;

public class ProjectedStockTests
{
    private static readonly LocalDate Today = new(2026, 3, 2);

    [Fact]
    public void Each_day_says_what_comes_what_is_needed_and_what_is_then_there()
    {
        var stock = Project(5, [Comes(3, 10)], [Wants(1, 1, 4, ready: 2), Wants(2, 2, 3), Wants(3, 5, 1)]);

        Assert.Equal(
            [(Today.PlusDays(1), 1m, -1m), (Today.PlusDays(2), -2m, -4m), (Today.PlusDays(3), 8m, 6m), (Today.PlusDays(5), 7m, 5m)],
            stock.Days.Select(d => (d.On, d.Level, d.LevelIfAllUsed)));
        Assert.Equal((Today.PlusDays(2), Today.PlusDays(1), -2m), (stock.FirstBelowZero, stock.FirstBelowZeroIfAllUsed, stock.Lowest));
        Assert.Equal(new ShortVisit(2, Today.PlusDays(2), 2, Today.PlusDays(3)), Assert.Single(stock.ShortVisits));
    }

    [Fact]
    public void A_visit_is_short_without_end_where_nothing_on_order_brings_enough()
    {
        var stock = Project(0, [Comes(2, 1)], [Wants(1, 1, 1), Wants(2, 3, 2)]);

        Assert.Equal([new ShortVisit(1, Today.PlusDays(1), 1, Today.PlusDays(2)), new ShortVisit(2, Today.PlusDays(3), 2, null)], stock.ShortVisits);
    }

    [Fact]
    public void What_is_held_for_a_later_visit_is_not_there_for_an_earlier_one()
    {
        var stock = Project(2, [Comes(8, 2)], [Wants(7, 5, 2), Wants(6, 10, 2, reserved: 2)]);

        Assert.Null(stock.FirstBelowZero);
        Assert.Equal(new ShortVisit(7, Today.PlusDays(5), 2, Today.PlusDays(8)), Assert.Single(stock.ShortVisits));
    }

    [Fact]
    public void Where_more_is_held_than_is_there_the_earlier_visit_has_it() =>
        Assert.Equal([2], Project(1, [], [Wants(2, 4, 1, reserved: 1), Wants(1, 2, 1, reserved: 1)]).ShortVisits.Select(s => s.JobCardNumber));

    [Fact]
    public void Levels_are_what_is_there_and_came_less_what_was_needed() => Cases.Sample((onHand, coming, needs) =>
    {
        var stock = Project(onHand, coming, needs);
        Assert.All(stock.Days, day =>
        {
            Assert.Equal(onHand + coming.Where(c => c.UsableFrom <= day.On).Sum(c => c.Quantity) - needs.Where(n => n.On <= day.On).Sum(n => n.Needed), day.Level);
            Assert.Equal(day.Level - needs.Where(n => n.On <= day.On).Sum(n => n.HaveReady), day.LevelIfAllUsed);
        });
        Assert.Equal(stock.Days.Select(d => d.On).Order(), stock.Days.Select(d => d.On));
        Assert.True(stock.FirstBelowZeroIfAllUsed is null == stock.FirstBelowZero is null || stock.FirstBelowZero is null);
    });

    /// <summary>Somebody is short by a day exactly when what is needed until then is not there; holding things back only adds to it.</summary>
    [Fact]
    public void Nobody_is_short_while_the_stock_stays_above_zero_unless_others_hold_it() => Cases.Sample((onHand, coming, needs) =>
    {
        var stock = Project(onHand, coming, needs);
        var free = Project(onHand, coming, [.. needs.Select(n => n with { Held = [] })]);
        Assert.Equal(free.FirstBelowZero is null, free.ShortVisits.Count == 0);
        Assert.Equal(free.FirstBelowZero, free.ShortVisits.Select(s => (LocalDate?)s.On).FirstOrDefault());
        Assert.All(stock.Days.Where(d => d.Level < 0), day => Assert.Contains(stock.ShortVisits, s => s.On <= day.On));
        Assert.All(stock.ShortVisits, s => Assert.True(s.ShortBy > 0 && s.ShortBy <= needs.Single(n => n.JobCardNumber == s.JobCardNumber).Needed && (s.Until is null || s.Until > s.On)));
    });

    [Fact]
    public void One_more_in_the_stores_makes_nobody_short() => Cases.Sample((onHand, coming, needs) =>
        Project(onHand + 1, coming, needs).ShortVisits.Sum(s => s.ShortBy) <= Project(onHand, coming, needs).ShortVisits.Sum(s => s.ShortBy));

    private static Gen<(decimal OnHand, Coming[] Coming, BookedNeed[] Needs)> Cases =>
        Gen.Select(
            Gen.Int[0, 12],
            Gen.Select(Gen.Int[1, 20], Gen.Int[1, 6]).Select((day, q) => Comes(day, q)).Array[0, 4],
            Gen.Select(Gen.Int[0, 20], Gen.Int[0, 4], Gen.Int[0, 2], Gen.Int[0, 3]).Array[0, 8])
        .Select((onHand, coming, needs) => ((decimal)onHand, coming, needs.Select((n, i) => Wants(i + 1, n.Item1, n.Item2, n.Item3, n.Item4)).ToArray()));

    [Fact]
    public void What_expires_unused_is_not_there_any_more()
    {
        var stock = ProjectedStock.Of(
            Ahead(60), [Lot(4, 8), Lot(null, 3)], [], [Wants(1, 2, 5), Wants(2, 5, 4)]);

        Assert.Equal(
            [(Today.PlusDays(2), 0m, 6m), (Today.PlusDays(5), 3m, -1m)], stock.Days.Select(d => (d.On, d.Expires, d.Level)));
        Assert.Equal((11m, new ShortVisit(2, Today.PlusDays(5), 1, null)), (stock.OnHand, Assert.Single(stock.ShortVisits)));
    }

    [Fact]
    public void With_lots_that_end_a_visit_is_short_exactly_from_the_day_below_zero_on() =>
        Gen.Select(Cases, Gen.Int[0, 9].Array[3]).Sample((c, quantities) =>
        {
            LotThere[] lots = [Lot(3, quantities[0]), Lot(8, quantities[1]), Lot(null, quantities[2])];
            var stock = ProjectedStock.Of(Ahead(60), lots, c.Coming, [.. c.Needs.Select(n => n with { Held = [] })]);
            Assert.Equal(stock.FirstBelowZero, stock.ShortVisits.Select(s => (LocalDate?)s.On).FirstOrDefault());
            Assert.All(stock.Days, d => Assert.Equal(
                stock.OnHand + stock.Days.Where(e => e.On <= d.On).Sum(e => e.Comes - e.Needed - e.Expires), d.Level));
            Assert.All(stock.Days, d => Assert.True(d.LevelIfAllUsed <= d.Level));
        });

    [Fact]
    public void A_visit_beyond_the_last_day_that_is_shown_keeps_what_is_reserved_for_it()
    {
        var stock = ProjectedStock.Of(Ahead(7), [new LotThere(null, 1, 0, 0)], [], [Wants(1, 2, 1), Wants(2, 20, 1, reserved: 1)]);

        Assert.Equal(new ShortVisit(1, Today.PlusDays(2), 1, null), Assert.Single(stock.ShortVisits));
        Assert.Single(stock.Days);
    }

    private static ProjectedStock Project(decimal onHand, Coming[] coming, BookedNeed[] needs)
    {
        var reserved = needs.Sum(n => n.Reserved);
        return ProjectedStock.Of(Ahead(60), [new LotThere(null, onHand, Math.Max(0, onHand - reserved), Math.Max(0, reserved - onHand))], coming, needs);
    }

    private static DateInterval Ahead(int days) => new(Today, Today.PlusDays(days));

    private static LotThere Lot(int? lastDay, decimal quantity) => new(lastDay is { } day ? Today.PlusDays(day) : null, quantity, quantity, 0);

    private static Coming Comes(int day, decimal quantity) => new(Today.PlusDays(day), quantity, Today.PlusDays(day - 1));

    private static BookedNeed Wants(int card, int day, decimal needed, decimal ready = 0, decimal reserved = 0) => new(
        card, Instant.FromUtc(2026, 3, 2, 8, 0) + Duration.FromDays(day), Today.PlusDays(day), needed, ready,
        reserved > 0 ? [new LotQuantity(null, reserved)] : []);
}
