using CsCheck;
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

    /// <summary>Common practice, no source: a wrench is least sure at the ends of its scale.</summary>
    [Fact]
    public void Of_wrenches_that_give_it_as_exactly_one_at_the_end_of_its_scale_comes_after_the_others()
    {
        var (small, middle, large) = (Wrench("N.m", 5, 25, 0.5m), Wrench("N.m", 10, 60, 0.5m), Wrench("N.m", 25, 125, 0.5m));

        Assert.Equal([middle, small, large], Chosen(Task(25), small, large, middle));
        Assert.Equal([small, middle], Chosen(Task(24.5m), large, middle, small));
        Assert.Equal([small], Chosen(Task(5), small, middle));
    }

    /// <summary>The order is all that it decides: what suits, and to what it is set, each way says for itself.</summary>
    [Fact]
    public void The_order_changes_nothing_about_which_wrenches_suit() =>
        Gen.Select(
            Gen.Select(Gen.Int[0, 20], Gen.Int[21, 120], Gen.Int[0, 10], (from, to, step) => Wrench("N.m", from, to, step == 0 ? null : step / 2m, 200, "1/4 in"))
                .Array[1, 6],
            Gen.Int[10, 1200].Select(tenths => tenths / 10m))
        .Sample((wrenches, torque) =>
        {
            var (task, ring) = (Task(torque), Ring("10 mm ring", 30));
            var choice = WrenchChoice.For(task, [.. wrenches.Select(w => w.OnHand())], [ring], Today);
            var suits =
                from wrench in wrenches
                from way in new[] { ((WrenchAdapter?)null, 0m), (ring, 0m), (ring, 90m) }
                let offer = WrenchJudgement.Of(task, wrench.OnHand(), way.Item1, way.Item2, Today).Offer
                where offer is not null
                select (wrench, way.Item1, offer.AngleDegrees, offer.Dialled);

            Assert.Equal(
                suits.ToHashSet(),
                choice.Offers.Select(o => (o.OnHand.Wrench, o.Adapter, o.AngleDegrees, o.Dialled)).ToHashSet());
            if (choice.Offers is [var best, ..] && best.Scale.IsAtEnd(best.Dialled))
            {
                Assert.DoesNotContain(choice.Offers, o =>
                    !o.Scale.IsAtEnd(o.Dialled) && o.Scale.Graduation is null == best.Scale.Graduation is null
                    && o.Adapter is null == best.Adapter is null && decimal.Round(Math.Abs(o.ErrorPercent), 6) <= decimal.Round(Math.Abs(best.ErrorPercent), 6));
            }
        });

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
