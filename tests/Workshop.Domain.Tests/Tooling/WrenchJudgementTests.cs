using CsCheck;
using Workshop.Domain.Tooling;
using static Workshop.Domain.Tests.Tooling.Wrenches;

namespace Workshop.Domain.Tests.Tooling;

public class WrenchJudgementTests
{
    [Theory]
    [InlineData(4.9, false)]
    [InlineData(5.0, true)]
    [InlineData(25.0, true)]
    [InlineData(25.1, false)]
    public void A_wrench_is_good_from_the_start_of_its_scale_to_its_rated_maximum(double newtonMetres, bool suits) =>
        Assert.Equal(suits, Suits(Wrench("N.m", 5, 25), newtonMetres));

    // A fifth of the rated maximum: common practice, no source.
    [Theory]
    [InlineData(19.9, false)]
    [InlineData(20.0, true)]
    public void A_wrench_is_not_good_below_a_fifth_of_its_rated_maximum(double newtonMetres, bool suits) =>
        Assert.Equal(suits, Suits(Wrench("N.m", 10, 100), newtonMetres));

    // 15 to 75 lbf.ft are 20.337 to 101.686 N.m: 1 lbf.ft = 1.355818 N.m, NIST SP 811 (2008), appendix B.8.
    [Theory]
    [InlineData(20.33, false)]
    [InlineData(20.34, true)]
    [InlineData(101.68, true)]
    [InlineData(101.69, false)]
    public void A_wrench_marked_in_pound_feet_is_judged_by_its_own_scale(double newtonMetres, bool suits) =>
        Assert.Equal(suits, Suits(Wrench("lbf.ft", 10, 75), newtonMetres));

    // 40 to 200 lbf.in are 4.519 to 22.597 N.m: 1 lbf.in = 0.1129848 N.m, same source.
    [Theory]
    [InlineData(4.51, false)]
    [InlineData(4.52, true)]
    [InlineData(22.59, true)]
    [InlineData(22.60, false)]
    public void A_wrench_marked_in_pound_inches_is_judged_by_its_own_scale(double newtonMetres, bool suits) =>
        Assert.Equal(suits, Suits(Wrench("lbf.in", 30, 200), newtonMetres));

    // NIST SP 811 (2008), appendix B.8 gives 1 lbf.ft = 1.355818 N.m, 1 lbf.in = 0.1129848 N.m, 1 kgf.m = 9.80665 N.m; ours are exact by definition.
    [Theory]
    [InlineData("N.m", 1, 6)]
    [InlineData("lbf.ft", 1.355818, 6)]
    [InlineData("lbf.in", 0.1129848, 7)]
    [InlineData("kgf.m", 9.80665, 5)]
    [InlineData("kgf.cm", 0.0980665, 7)]
    public void The_units_of_scales_are_the_published_ones(string unit, double published, int digits) =>
        Assert.Equal((decimal)published, decimal.Round(WrenchScale.NewtonMetresIn(unit)!.Value, digits));

    [Fact]
    public void A_setting_is_rounded_to_a_mark_and_the_error_is_said()
    {
        // 24 N.m are 17.7015 lbf.ft; the marks beside are 17.5 and 18: 17.5 x 1.3558179 = 23.7268 N.m.
        var offer = Offer(Task(24), Wrench("lbf.ft", 10, 80, graduation: 0.5m));

        Assert.Equal(("17.5 lbf.ft", 23.7268m, -0.2732m, -1.138m), (
            offer.Setting, decimal.Round(offer.AtFastenerNm, 4), decimal.Round(offer.ErrorNm, 4), decimal.Round(offer.ErrorPercent, 3)));
    }

    [Fact]
    public void A_mark_outside_the_maker_s_range_is_not_dialled_though_it_is_nearer()
    {
        // Marks at 8 and 10; 8.5 to 10 N.m is allowed, 8.9 wanted.
        var wrench = Wrench("N.m", 4, 20, graduation: 2);

        Assert.Equal(8, Offer(Task(8.9m), wrench).Dialled);
        Assert.Equal(10, Offer(Task(8.9m, 8.5m, 10), wrench).Dialled);
        Assert.Equal("can be set to 8 N.m or 10 N.m, which gives no torque within 8.5 to 9.5 N.m", Against(Task(8.9m, 8.5m, 9.5m), wrench));
    }

    [Fact]
    public void The_fifth_holds_for_what_is_dialled_not_for_what_the_fastener_gets()
    {
        // 5 N.m at the fastener are 4 on the dial: 5 x 200 / (200 + 50); the wrench is good from 5.
        var wrench = Wrench("N.m", 2, 25, 0.1m, 200, "1/4 in");
        var ring = Ring("10 mm ring", 50);

        Assert.Null(Against(Task(5), wrench));
        Assert.Equal("is good for 5 to 25 N.m, and 4 N.m is to be dialled", Against(Task(5), wrench, ring, 0));
        Assert.Null(Against(Task(5), wrench, ring, 90));
    }

    [Fact]
    public void An_adapter_must_fit_drive_head_and_space()
    {
        var wrench = Wrench("N.m", 2, 25, 0.1m, 200, "1/4 in");

        Assert.Equal("with Ring 30: that is 10 mm thick at the fastener, and 8 mm are free over the head", Against(Task(9, space: 8), wrench, Ring("10 mm ring", 30)));
        Assert.Equal("takes no socket there: 8 mm are free over the head, so that a thin ring is needed", Against(Task(9, space: 8), wrench));
        Assert.Equal("has the drive 1/4 in, and Ring 30 fits 3/8 in", Against(Task(9), wrench, Ring("10 mm ring", 30, drive: "3/8 in")));
        Assert.Equal("with Ring 30: that is a 12 mm ring, and the fastener takes a 10 mm socket", Against(Task(9), wrench, Ring("12 mm ring", 30)));
        Assert.Null(Against(Task(9, space: 10), wrench, Ring("10 mm ring", 30)));
    }

    [Fact]
    public void A_wrench_without_known_length_takes_an_extension_bar_but_no_offset_adapter()
    {
        var wrench = Wrench("N.m", 2, 25, 0.1m, null, "1/4 in");
        var bar = Ring("any socket", 0, null, kind: WrenchAdapterKind.ExtensionBar);

        Assert.Equal("takes no offset adapter: its length is not recorded", Against(Task(9), wrench, Ring("10 mm ring", 30)));
        Assert.Equal(9, Offer(Task(9), wrench, bar).Dialled);
        Assert.Equal("takes no adapter: its drive is not recorded", Against(Task(9), Wrench("N.m", 2, 25, 0.1m, 200), Ring("10 mm ring", 30)));
    }

    [Theory]
    [InlineData("10 mm socket", "10 mm ring", true)]
    [InlineData("10 mm socket", "10 mm thin ring", true)]
    [InlineData("10 mm ring spanner on the wrench, screw held by its square", "10 mm open end", true)]
    [InlineData("10 mm socket", "8 mm ring", false)]
    [InlineData("16 mm plug socket", "16 mm ring", false)]
    [InlineData("10 mm hexagon", "10 mm ring", false)]
    [InlineData("cap key for the cartridge", "Cap key for the cartridge", true)]
    public void What_goes_over_the_same_hexagon_fits(string asked, string tool, bool fits) => Assert.Equal(fits, DrivenTool.Fits(asked, tool));

    [Fact]
    public void A_setting_of_one_s_own_is_kept_within_the_range_and_on_a_mark()
    {
        var (wrench, task) = (Wrench("N.m", 2, 10, graduation: 0.5m), Task(9, 8, 10));
        var offer = Offer(task, wrench);

        Assert.Null(WrenchJudgement.AgainstDialled(task, offer, 9));
        Assert.Null(WrenchJudgement.AgainstDialled(task, offer, 8.5m));
        Assert.Equal("9 N.m is to be dialled for 8 to 10 N.m", WrenchJudgement.AgainstDialled(task, offer, 7.5m));
        Assert.Equal("9 N.m is to be dialled for 8 to 10 N.m", WrenchJudgement.AgainstDialled(task, offer, 8.7m));
        Assert.Equal("9 N.m is to be dialled for 9 N.m", WrenchJudgement.AgainstDialled(Task(9), offer, 8.5m));
    }

    [Fact]
    public void What_is_offered_is_on_a_mark_within_the_scale_and_the_range() => Gen
        .Select(Gen.Int[100, 6000], Gen.Int[1, 20], Gen.OneOf(Gen.Const("N.m"), Gen.Const("lbf.ft"), Gen.Const("lbf.in")), Gen.Int[0, 18], Gen.Bool)
        .Sample((hundredths, graduation, unit, tens, withAdapter) =>
        {
            var torque = hundredths / 100m;
            var wrench = Wrench(unit, 5, 50, graduation / 20m, 250, "1/4 in");
            var task = Task(torque, decimal.Round(torque * 0.95m, 2), decimal.Round(torque * 1.05m, 2));
            var (offer, against) = WrenchJudgement.Of(task, wrench.OnHand(), withAdapter ? Ring("10 mm ring", 40) : null, tens * 10, Today);

            Assert.NotEqual(offer is null, against is null);
            if (offer is not null)
            {
                Assert.InRange(offer.Dialled, 10, 50);
                Assert.Equal(0, (offer.Dialled - 5) % (graduation / 20m));
                Assert.InRange(offer.AtFastenerNm, task.Lowest!.Value.NewtonMetres, task.Highest!.Value.NewtonMetres);
                Assert.Equal(offer.AtFastenerNm - torque, offer.ErrorNm);
            }
        });

    private static bool Suits(Instrument wrench, double newtonMetres) => Against(Task((decimal)newtonMetres), wrench) is null;

    private static WrenchOffer Offer(WrenchTask task, Instrument wrench, WrenchAdapter? adapter = null) =>
        WrenchJudgement.Of(task, wrench.OnHand(), adapter, 0, Today).Offer!;

    private static string? Against(WrenchTask task, Instrument wrench, WrenchAdapter? adapter = null, decimal angle = 0) =>
        WrenchJudgement.Of(task, wrench.OnHand(), adapter, angle, Today).Against;
}
