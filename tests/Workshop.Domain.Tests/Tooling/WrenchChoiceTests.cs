using Workshop.Domain.Tooling;
using static Workshop.Domain.Tests.Tooling.Wrenches;

namespace Workshop.Domain.Tests.Tooling;

public class WrenchChoiceTests
{
    [Fact]
    public void The_smallest_error_of_rounding_comes_first_and_then_the_finest_scale()
    {
        var (coarse, fine, large) = (Wrench("N.m", 5, 30, 1), Wrench("N.m", 2, 25, 0.5m), Wrench("N.m", 8, 40, 0.5m));

        // 9.5: the first can be set to 9 or 10 only; the others exactly, and the smaller of the two is the finer.
        Assert.Equal([fine, large, coarse], Chosen(Task(9.5m), coarse, large, fine));
    }

    [Fact]
    public void A_wrench_whose_marks_are_unknown_comes_last_and_one_with_nothing_in_between_before_an_adapter()
    {
        var (unknown, known) = (Wrench("N.m", 2, 12), Wrench("N.m", 2, 25, 1, 200, "1/4 in"));

        var offers = WrenchChoice.For(Task(9.5m), [unknown.OnHand(), known.OnHand()], [Ring("10 mm ring", 30)], Today).Offers;

        Assert.Equal([(known, (decimal?)null), (known, 0), (known, 90), (unknown, null)], offers.Select(o => (o.OnHand.Wrench, o.AngleDegrees)));
    }

    [Fact]
    public void Where_no_socket_goes_on_a_ring_across_needs_no_correction_and_comes_first()
    {
        var wrench = Wrench("N.m", 2, 10, 0.1m, 190, "1/4 in");

        var choice = WrenchChoice.For(Task(9, space: 9), [wrench.OnHand()], [Ring("10 mm ring", 32, 7.5m), Ring("10 mm open end", 38, 15)], Today);

        // Straight on: 9 x 190 / 222 = 7.7027.
        Assert.Equal([(90m, 9m), (0m, 7.7m)], choice.Offers.Select(o => (o.AngleDegrees!.Value, o.Dialled)));
        Assert.Equal("Thin ring needed: 9 mm are free over the head.", choice.AccessNote);
        Assert.Null(choice.Missing);
    }

    [Fact]
    public void Where_none_suits_the_missing_range_and_the_nearest_are_named()
    {
        var (small, middle) = (Wrench("N.m", 2, 10), Wrench("N.m", 6, 25));

        Assert.Equal(
            "a wrench for 1 to 1.8 N.m is missing; the nearest, Wrench to 10 N.m (W), is good for 2 to 10 N.m, and 1.4 N.m is to be dialled",
            Missing(Task(1.4m, 1, 1.8m), middle, small));
        Assert.Equal(
            "a wrench for 40 N.m is missing; the nearest, Wrench to 25 N.m (W), is good for 6 to 25 N.m, and 40 N.m is to be dialled",
            Missing(Task(40), middle, small));
        Assert.Equal("a wrench for 9 N.m is missing", Missing(Task(9)));
    }

    [Fact]
    public void One_that_would_suit_but_is_held_back_is_named_with_the_reason()
    {
        var (dropped, small) = (Wrench("N.m", 6, 30), Wrench("N.m", 2, 10));
        InstrumentChanges.Apply(dropped, InstrumentEventKind.Dropped, null, Today);

        Assert.Equal(
            "a wrench for 20 N.m is missing; the nearest, Wrench to 10 N.m (W), is good for 2 to 10 N.m, and 20 N.m is to be dialled; "
            + "Wrench to 30 N.m (W) would suit, but was dropped on 2026-03-02 and is neither calibrated nor released since",
            Missing(Task(20), small, dropped));
    }

    [Fact]
    public void A_ring_that_is_too_thick_is_missing_as_a_ring()
    {
        var wrench = Wrench("N.m", 2, 10, 0.1m, 190, "1/4 in");

        var choice = WrenchChoice.For(Task(9, space: 6), [wrench.OnHand()], [Ring("10 mm ring", 32, 7.5m)], Today);

        Assert.Equal("a ring for 10 mm socket, at most 6 mm thick, is missing; the thinnest, Ring 32, is 7.5 mm", choice.Missing);
        Assert.Equal("with Ring 32: that is 7.5 mm thick at the fastener, and 6 mm are free over the head", Assert.Single(choice.Against).Reason);
    }

    private static IEnumerable<Instrument> Chosen(WrenchTask task, params Instrument[] wrenches) =>
        WrenchChoice.For(task, [.. wrenches.Select(w => w.OnHand())], [], Today).Offers.Select(o => o.OnHand.Wrench);

    private static string? Missing(WrenchTask task, params Instrument[] wrenches) =>
        WrenchChoice.For(task, [.. wrenches.Select(w => w.OnHand())], [], Today).Missing;
}
