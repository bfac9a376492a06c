using CsCheck;
using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using static Workshop.Domain.Tests.CamTiming.MadeUpDrives;

namespace Workshop.Domain.Tests.CamTiming;

public class WheelSeriesTests
{
    private static readonly DeadCentre Right = new(DeadCentreMethod.PositiveStop, Degrees(30), Degrees(30));

    [Fact]
    public void Dead_centre_is_in_the_middle_of_the_stop_s_two_readings()
    {
        // A worked example of blog.decatech.com (degree wheel), seen: 36.75 one way, 35.25 the other, 36 is the average.
        var found = new DeadCentre(DeadCentreMethod.PositiveStop, Degrees(36.75m), Degrees(35.25m));

        Assert.Equal(36, (found.Before!.Value + found.WheelAtDeadCentre).Degrees);
        Assert.Equal(36, (found.After!.Value - found.WheelAtDeadCentre).Degrees);
        Assert.Contains("0.75° before at dead centre", found.Sentence, StringComparison.Ordinal);
    }

    /// <summary>However the wheel was put on, true events come out.</summary>
    [Fact]
    public void A_wheel_that_is_off_changes_nothing() =>
        Gen.Select(Gen.Int[-2000, 2000], Gen.Int[-3000, 6000], Gen.Int[0, 9000], Gen.Enum<Side>()).Sample((off, opens, closes, side) =>
        {
            var wheel = Degrees(off / 100m);
            var truth = new CamEvents(Degrees(opens / 100m), Degrees(closes / 100m));
            var shown = truth.Advanced(-wheel); // A wheel that shows more after dead centre shows less before it.
            var stop = new DeadCentre(DeadCentreMethod.PositiveStop, Degrees(40) - wheel, Degrees(40) + wheel);

            var series = WheelSeries.Of(side, [shown], stop);

            Assert.Equal(wheel, stop.WheelAtDeadCentre);
            Assert.Equal(truth, series.Mean);
        });

    [Fact]
    public void Turns_are_averaged_and_their_scatter_is_stated()
    {
        var series = WheelSeries.Of(Side.Intake, [Events(14, 45), Events(15, 44), Events(15.5m, 43.5m)], Right);

        Assert.Equal((14.5m + (1m / 3)) - 0.0m, series.Mean.Opens.Degrees, 6);
        Assert.Equal(1.5m, series.EventScatter!.Value.Degrees);
        Assert.Equal(1.5m, series.CentreScatter!.Value.Degrees);
        Assert.False(series.Disagrees);
        Assert.Null(series.AsksForRepeat);
    }

    [Fact]
    public void Turns_that_differ_ask_for_another()
    {
        var series = WheelSeries.Of(Side.Intake, [Events(14, 45), Events(17, 42)], Right);

        Assert.True(series.Disagrees);
        Assert.Contains("differ by 3°", series.AsksForRepeat, StringComparison.Ordinal);
    }

    [Fact]
    public void One_turn_tells_no_scatter_and_asks_for_another()
    {
        var series = WheelSeries.Of(Side.Intake, [Events(14, 45)], Right);

        Assert.Null(series.CentreScatter);
        Assert.Contains("once more", series.AsksForRepeat, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 0, TimingVerdict.Within)]
    [InlineData(2, 0, TimingVerdict.Within)]
    [InlineData(2.01, 0, TimingVerdict.Early)]
    [InlineData(-2.01, 0, TimingVerdict.Late)]
    [InlineData(1.5, 0.6, TimingVerdict.NotDecided)]
    [InlineData(-2.4, 0.5, TimingVerdict.NotDecided)]
    [InlineData(-2.6, 0.5, TimingVerdict.Late)]
    public void Near_the_limit_the_scatter_of_the_readings_decides_nothing(decimal advance, decimal uncertain, TimingVerdict verdict) =>
        Assert.Equal(verdict, LobeFinding.Judge(Degrees(advance), Degrees(2), Degrees(uncertain)));

    [Fact]
    public void Late_is_further_after_top_for_the_intake_and_nearer_before_it_for_the_exhaust()
    {
        Assert.Equal(-4, LobeFinding.AdvanceOf(Side.Intake, Degrees(105), Degrees(109)).Degrees);
        Assert.Equal(-4, LobeFinding.AdvanceOf(Side.Exhaust, Degrees(107), Degrees(103)).Degrees);
    }

    [Fact]
    public void Events_at_another_lift_tell_the_centre_only_where_the_maker_states_a_centre()
    {
        var stated = new LobeTiming(Intake, Side.Intake, Degrees(2)) { Opens = Degrees(12), Closes = Degrees(42), AtLiftMm = 1, MeasuredAt = LiftStation.Follower };
        var series = WheelSeries.Of(Side.Intake, [Events(12, 42), Events(12, 42)], Right);

        var atIt = LobeFinding.Of(stated, series, 1, LiftStation.Follower);
        Assert.Equal(TimingVerdict.Within, atIt.Verdict);
        Assert.Equal(0, atIt.DurationDeviation!.Value.Degrees);
        Assert.Contains("0.5 mm", LobeFinding.Of(stated, series, 0.5m, LiftStation.Follower).WhyNotCompared, StringComparison.Ordinal);
        Assert.Equal(TimingVerdict.Within, LobeFinding.Of(stated with { LobeCentre = Degrees(105) }, series, 0.5m, LiftStation.Follower).Verdict);
        Assert.Contains("at the valve", LobeFinding.Of(stated, series, 1, LiftStation.Valve).WhyNotCompared, StringComparison.Ordinal);
    }

    private static CamEvents Events(decimal opens, decimal closes) => new(Degrees(opens), Degrees(closes));
}
