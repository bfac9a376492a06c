using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Intervals;

public class RidingRateTests
{
    private static readonly LocalDate Start = new(2020, 1, 1);

    [Fact]
    public void A_steady_rider_has_exactly_the_rate_ridden()
    {
        var rate = RidingRate.Of(Track((100, 2_000), (250, 5_000), (600, 12_000)));

        Assert.Equal(RateBasis.OwnReadings, rate.Basis);
        Assert.Equal(Distance.FromKilometres(20), rate.PerDay);
        Assert.Equal((rate.PerDay, rate.PerDay), (rate.Slowest, rate.Fastest));
    }

    /// <summary>The figures of the robust line's own test: one digit too many, and one exchanged figure.</summary>
    [Fact]
    public void A_mistyped_reading_leaves_the_rate_alone()
    {
        int[] days = [40, 95, 180, 260, 300, 365, 430, 500];
        var readings = days.Select(day => (day, 30 * day)).ToArray();
        readings[1].Item2 += 90_000;
        readings[5].Item2 -= 2_700;

        Assert.Equal(Distance.FromKilometres(30), RidingRate.Of(Track(readings)).PerDay);
    }

    [Fact]
    public void The_span_of_three_points_has_two_thirds_and_says_so()
    {
        var rate = RidingRate.Of(Track((100, 1_000), (200, 3_000)));

        Assert.Equal(2.0 / 3, rate.Confidence!.Value, 1e-12);
        Assert.Equal((10, 15, 20), (Km(rate.Slowest), Km(rate.PerDay), Km(rate.Fastest)));
    }

    [Fact]
    public void One_reading_gives_the_rate_of_one_stretch_with_a_wide_span()
    {
        var rate = RidingRate.Of(Track((300, 9_000)));

        Assert.Equal(RateBasis.OneStretch, rate.Basis);
        Assert.Equal((10, 30, 90), (Km(rate.Slowest), Km(rate.PerDay), Km(rate.Fastest)));
        Assert.Null(rate.Confidence);
    }

    [Fact]
    public void No_reading_at_all_gives_the_usual_rate_and_says_so()
    {
        var rate = RidingRate.Of(Track());

        Assert.Equal(RateBasis.Assumed, rate.Basis);
        Assert.Equal(
            (1_000, 5_000, 15_000),
            (Km(RidingRate.Yearly(rate.Slowest)), Km(RidingRate.Yearly(rate.PerDay)), Km(RidingRate.Yearly(rate.Fastest))));
    }

    [Fact]
    public void Readings_of_one_tour_are_no_rate()
    {
        var rate = RidingRate.Of(Track((1, 600), (5, 3_000), (RidingRate.FewestDaysApart - 1, 9_000)));

        Assert.Equal(RateBasis.Assumed, rate.Basis);
    }

    [Fact]
    public void A_motorcycle_that_stands_has_no_rate_below_zero()
    {
        var rate = RidingRate.Of(Track((200, 500), (400, 500), (600, 500), (800, 500)));

        Assert.Equal(Distance.Zero, rate.Slowest);
        Assert.True(rate.PerDay >= rate.Slowest);
    }

    [Fact]
    public void Only_the_latest_days_count()
    {
        var first = Enumerable.Range(1, 40).Select(i => (i * 30, i * 3_000));
        var later = Enumerable.Range(1, RidingRate.MostDays).Select(i => (1_200 + (i * 30), 120_000 + (i * 300)));

        Assert.Equal(10, Km(RidingRate.Of(Track([.. first, .. later])).PerDay));
    }

    private static decimal Km(Distance distance) => distance.Kilometres;

    private static OdometerTrack Track(params (int Day, int Km)[] readings) => OdometerTrack.Of(
        new OdometerPoint(Start, Distance.Zero),
        readings.Select(r => new OdometerPoint(Start.PlusDays(r.Day), Distance.FromKilometres(r.Km))));
}
