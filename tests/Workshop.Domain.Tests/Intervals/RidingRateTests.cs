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
        var rate = Of(Track((100, 2_000), (250, 5_000), (600, 12_000)));

        Assert.Equal(RateBasis.OwnReadings, rate.Basis);
        Assert.Equal(Distance.FromKilometres(20), rate.PerDay);
        Assert.True(rate.Slowest < rate.PerDay && rate.PerDay < rate.Fastest);
    }

    /// <summary>The figures of the robust line's own test: one digit too many, and one exchanged figure.</summary>
    [Fact]
    public void A_mistyped_reading_leaves_the_rate_alone()
    {
        int[] days = [40, 95, 180, 260, 300, 365, 430, 500];
        var readings = days.Select(day => (day, 30 * day)).ToArray();
        readings[1].Item2 += 90_000;
        readings[5].Item2 -= 2_700;

        Assert.Equal(Distance.FromKilometres(30), Of(Track(readings)).PerDay);
    }

    /// <summary>Precisions of the log of the rate add: worked by hand from the two variances.</summary>
    [Fact]
    public void One_or_two_readings_are_weighed_with_the_fleet_by_precision()
    {
        var fleet = FleetRiding.Usual;

        var rate = Of(Track((300, 9_000)));

        var (own, wide) = ((1.2 * fleet.WanderDays / 300) + 0.01, fleet.LogDeviation * fleet.LogDeviation);
        var log = ((Math.Log(30_000) / own) + (Math.Log((double)fleet.PerDay.Metres) / wide)) / ((1 / own) + (1 / wide));
        Assert.Equal(RateBasis.Borrowed, rate.Basis);
        Assert.Equal(Math.Exp(log), (double)rate.PerDay.Metres, 0.01);
        Assert.Equal(1 / ((1 / own) + (1 / wide)), rate.Variance, 1e-12);
        Assert.InRange(Km(rate.PerDay), Km(fleet.PerDay), 30);
        Assert.Equal(RateBasis.Borrowed, Of(Track((100, 1_000), (200, 3_000))).Basis);
    }

    [Fact]
    public void The_more_there_is_to_go_by_the_narrower_the_span()
    {
        var spans = new[] { Track(), Track((300, 9_000)), Track((150, 4_400), (300, 9_000)), Track((100, 3_100), (200, 5_900), (300, 9_000)), Steady(20) }
            .Select(track => Of(track)).Select(rate => (double)(rate.Fastest.Metres / rate.Slowest.Metres)).ToArray();

        Assert.Equal(spans.OrderDescending(), spans);
    }

    [Fact]
    public void A_winter_without_a_reading_is_no_slower_year_when_the_season_is_known()
    {
        var season = RidingSeason.Of(-0.8, 0);
        var days = new[] { 0, 120, 160, 200, 240, 280, 485, 525, 565, 605, 645 };
        var track = OdometerTrack.Of(
            new OdometerPoint(Start, Distance.Zero),
            days.Skip(1).Select(d => new OdometerPoint(Start.PlusDays(d), Distance.FromMetres((decimal)(20_000 * season.DaysBetween(Start, Start.PlusDays(d)))))));

        var rate = RidingRate.Of(track, FleetRiding.Usual with { Season = season });

        Assert.Equal(20, (double)rate.PerDay.Kilometres, 0.01);
        Assert.True(Math.Abs((double)Of(track).PerDay.Kilometres - 20) > 1);
    }

    [Fact]
    public void A_gap_of_years_in_a_steady_record_changes_nothing() => Assert.Equal(
        Distance.FromKilometres(20), Of(Track((100, 2_000), (200, 4_000), (1_500, 30_000), (1_600, 32_000))).PerDay);

    [Fact]
    public void No_reading_at_all_gives_what_the_fleet_rides_and_says_so()
    {
        var rate = Of(Track());

        Assert.Equal((RateBasis.Assumed, FleetRiding.Usual.PerDay), (rate.Basis, rate.PerDay));
        Assert.Equal(5_000, Km(RidingRate.Yearly(rate.PerDay)));
        Assert.InRange(Km(RidingRate.Yearly(rate.Slowest)), 1_500, 1_700);
        Assert.InRange(Km(RidingRate.Yearly(rate.Fastest)), 14_500, 16_000);
    }

    /// <summary>
    /// Riders simulated as the model says: a rate, and what is ridden from reading to reading gamma with relative variance w / days,
    /// so that it is never below zero. Of the days on which the next 6000 km were full, about one in ten is before the span and one in
    /// ten beyond.
    /// </summary>
    [Fact]
    public void Spans_hold_about_what_they_say()
    {
        var random = new MathNet.Numerics.Random.MersenneTwister(20261126);
        var (before, within, beyond) = (0, 0, 0);
        for (var rider = 0; rider < 1_500; rider++)
        {
            var perDay = 13_700 * Math.Exp(0.8 * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1));
            var (day, metres) = (0, 0.0);
            var points = new List<OdometerPoint>();
            for (var reading = 0; reading < 6; reading++)
            {
                var step = random.Next(40, 240);
                metres += Ridden(random, perDay, step);
                day += step;
                points.Add(new OdometerPoint(Start.PlusDays(day), Distance.FromMetres((decimal)Math.Round(metres))));
            }

            var track = OdometerTrack.Of(new OdometerPoint(Start, Distance.Zero), points);
            var (_, earliest, latest) = NextDue.Reach(
                track.Last.Distance + Distance.FromKilometres(6_000), track, RidingRate.Of(track, FleetRiding.Usual with { WanderDays = 20 }));
            var full = 0;
            for (var since = 0.0; since < 6_000_000 && full < 7_000; full++)
            {
                since += Ridden(random, perDay, 1);
            }

            var on = track.Last.On.PlusDays(full);
            (before, within, beyond) = on < earliest ? (before + 1, within, beyond)
                : latest is { } last && on > last ? (before, within, beyond + 1)
                : (before, within + 1, beyond);
        }

        Assert.InRange(before, 75, 225);
        Assert.InRange(beyond, 75, 225);
        Assert.InRange(within, 1_125, 1_320);
    }

    private static double Ridden(Random random, double perDay, int days) =>
        MathNet.Numerics.Distributions.Gamma.Sample(random, days / 20.0, days / 20.0) * perDay * days;

    [Fact]
    public void Readings_of_one_tour_are_no_rate()
    {
        var rate = Of(Track((1, 600), (5, 3_000), (RidingRate.FewestDaysApart - 1, 9_000)));

        Assert.Equal(RateBasis.Assumed, rate.Basis);
    }

    [Fact]
    public void A_motorcycle_that_stands_has_no_rate_below_zero()
    {
        var rate = Of(Track((200, 500), (400, 500), (600, 500), (800, 500)));

        Assert.Equal((Distance.Zero, Distance.Zero), (rate.Slowest, rate.PerDay));
    }

    [Fact]
    public void Only_the_latest_days_count()
    {
        var first = Enumerable.Range(1, 40).Select(i => (i * 30, i * 3_000));
        var later = Enumerable.Range(1, RidingRate.MostDays).Select(i => (1_200 + (i * 30), 120_000 + (i * 300)));

        Assert.Equal(10, Km(Of(Track([.. first, .. later])).PerDay));
    }

    private static RidingRate Of(OdometerTrack track) => RidingRate.Of(track, FleetRiding.Usual);

    private static OdometerTrack Steady(int readings) => Track([.. Enumerable.Range(1, readings).Select(i => (i * 60, i * 1_800))]);

    private static decimal Km(Distance distance) => distance.Kilometres;

    private static OdometerTrack Track(params (int Day, int Km)[] readings) => OdometerTrack.Of(
        new OdometerPoint(Start, Distance.Zero),
        readings.Select(r => new OdometerPoint(Start.PlusDays(r.Day), Distance.FromKilometres(r.Km))));
}
