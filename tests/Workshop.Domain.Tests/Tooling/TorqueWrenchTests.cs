using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Tooling;

namespace Workshop.Domain.Tests.Tooling;

public class TorqueWrenchTests
{
    private static readonly LocalDate Today = new(2026, 3, 2);

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
    public void A_wrench_marked_in_pound_feet_is_judged_in_newton_metres(double newtonMetres, bool suits) =>
        Assert.Equal(suits, Suits(Wrench("lbf.ft", 10, 75), newtonMetres));

    // 40 to 200 lbf.in are 4.519 to 22.597 N.m: 1 lbf.in = 0.1129848 N.m, same source.
    [Theory]
    [InlineData(4.51, false)]
    [InlineData(4.52, true)]
    [InlineData(22.59, true)]
    [InlineData(22.60, false)]
    public void A_wrench_marked_in_pound_inches_is_judged_in_newton_metres(double newtonMetres, bool suits) =>
        Assert.Equal(suits, Suits(Wrench("lbf.in", 30, 200), newtonMetres));

    [Fact]
    public void A_wrench_may_be_used_on_the_day_its_calibration_is_due_and_not_after()
    {
        var wrench = Wrench("N.m", 5, 25);
        wrench.CalibrationDueOn = Today;

        Assert.Null(TorqueWrench.ReasonAgainst(wrench, Torque.FromNewtonMetres(10), Today));
        Assert.Equal(
            "was due for calibration on 2026-03-02", TorqueWrench.ReasonAgainst(wrench, Torque.FromNewtonMetres(10), Today.PlusDays(1)));
    }

    [Fact]
    public void What_is_against_a_wrench_is_said()
    {
        var ten = Torque.FromNewtonMetres(10);
        var away = Wrench("N.m", 5, 25);
        away.State = InstrumentState.OutForCalibration;
        var gone = Wrench("N.m", 5, 25);
        gone.State = InstrumentState.Withdrawn;

        Assert.Equal("is out for calibration", TorqueWrench.ReasonAgainst(away, ten, Today));
        Assert.Equal("is withdrawn", TorqueWrench.ReasonAgainst(gone, ten, Today));
        Assert.Equal(
            "is good for 20 to 100 N.m, and 10 N.m is to be dialled", TorqueWrench.ReasonAgainst(Wrench("N.m", 10, 100), ten, Today));
        Assert.Equal("has no known scale", TorqueWrench.ReasonAgainst(Wrench("N.m", null, null), ten, Today));
        Assert.Equal("has no known scale", TorqueWrench.ReasonAgainst(Wrench("mm", 5, 25), ten, Today));
        Assert.Equal("is no torque wrench", TorqueWrench.ReasonAgainst(Wrench("N.m", 5, 25, InstrumentKind.Micrometer), ten, Today));
    }

    [Fact]
    public void The_finest_scale_that_suits_is_named_first()
    {
        var (small, middle, large) = (Wrench("N.m", 5, 25), Wrench("lbf.ft", 3, 30), Wrench("N.m", 20, 200));

        Assert.Equal([small, middle], TorqueWrench.Suited([large, middle, small], Torque.FromNewtonMetres(20), Today));
    }

    private static bool Suits(Instrument wrench, double newtonMetres) =>
        TorqueWrench.ReasonAgainst(wrench, Torque.FromNewtonMetres((decimal)newtonMetres), Today) is null;

    private static Instrument Wrench(
        string unit, decimal? lowest, decimal? highest, InstrumentKind kind = InstrumentKind.TorqueWrench) => new()
    {
        Id = NewId.At(Instant.FromUtc(2026, 3, 2, 8, 0)), Kind = kind, Name = $"Wrench to {highest} {unit}", SerialNumber = "W", Unit = unit,
        RangeLowest = lowest, RangeHighest = highest, CalibrationDueOn = Today.PlusYears(1),
    };
}
