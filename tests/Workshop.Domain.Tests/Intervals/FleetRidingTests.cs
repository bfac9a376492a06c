using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Random;
using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Intervals;

public class FleetRidingTests
{
    private static readonly LocalDate Start = new(2020, 1, 1);

    [Fact]
    public void Few_motorcycles_tell_nothing_of_the_others() =>
        Assert.Equal(FleetRiding.Usual, FleetRiding.Of(Riders(FleetRiding.FewestMotorcycles - 1, RidingSeason.None)));

    /// <summary>The fleet is made with known figures; estimates from 300 riders come near them.</summary>
    [Fact]
    public void Middle_spread_and_wander_come_out_as_they_were_put_in()
    {
        var fleet = FleetRiding.Of(Riders(300, RidingSeason.None));

        Assert.Equal(300, fleet.Motorcycles);
        Assert.InRange((double)fleet.PerDay.Metres, 12_000, 15_500);
        Assert.InRange(fleet.LogDeviation, 0.5, 0.72);
        Assert.InRange(fleet.WanderDays, 7, 16);
    }

    [Fact]
    public void A_season_is_found_where_there_is_one_and_not_where_there_is_none()
    {
        var winter = FleetRiding.Of(Riders(200, RidingSeason.Of(-0.7, 0.1)));
        var even = FleetRiding.Of(Riders(200, RidingSeason.None));

        Assert.True(winter.SeasonProbability < 1e-6);
        Assert.InRange(winter.Season.Cosine, -0.85, -0.55);
        Assert.InRange(winter.Season.Sine, -0.05, 0.25);
        Assert.True(even.SeasonProbability > 0.001);
        Assert.Equal(RidingSeason.None, even.Season);
    }

    /// <summary>By chance a season is seen about as often as its level says: 40 fleets that have none, at one in a hundred.</summary>
    [Fact]
    public void Fleets_without_a_season_are_seldom_given_one() =>
        Assert.InRange(Enumerable.Range(1, 40).Count(seed => FleetRiding.Of(Riders(60, RidingSeason.None, seed)).Season != RidingSeason.None), 0, 3);

    [Fact]
    public void The_order_of_the_motorcycles_makes_no_difference()
    {
        var riders = Riders(80, RidingSeason.Of(-0.5, 0)).ToList();
        var (one, other) = (FleetRiding.Of(riders), FleetRiding.Of(Enumerable.Reverse(riders)));

        Assert.Equal(one.PerDay, other.PerDay);
        Assert.Equal(one.Season.Cosine, other.Season.Cosine, 1e-9);
    }

    [Fact]
    public void Some_wild_readings_move_it_little()
    {
        var riders = Riders(200, RidingSeason.None).ToList();
        for (var i = 0; i < 20; i++)
        {
            var points = riders[i].Points.ToArray();
            points[2] = points[2] with { Distance = points[2].Distance + Distance.FromKilometres(900_000) };
            riders[i] = OdometerTrack.Of(points[0], points.Skip(1));
        }

        var (clean, dirty) = (FleetRiding.Of(Riders(200, RidingSeason.None)), FleetRiding.Of(riders));
        Assert.InRange((double)(dirty.PerDay.Metres / clean.PerDay.Metres), 0.95, 1.05);
        Assert.InRange(dirty.WanderDays / clean.WanderDays, 0.8, 1.4);
        Assert.Equal(RidingSeason.None, dirty.Season);
    }

    /// <summary>The two parts of the wave beside a QR decomposition of MathNet.Numerics on the same weighted rows.</summary>
    [Fact]
    public void The_wave_is_that_of_weighted_least_squares()
    {
        // All riders alike and steady apart from the season, so that no row is cut off and every rate is the same.
        var season = RidingSeason.Of(-0.3, 0.2);
        var tracks = Enumerable.Range(0, 40).Select(i => Exact(season, 3 * i)).ToList();

        var fleet = FleetRiding.Of(tracks);

        var (rows, right) = (new List<double[]>(), new List<double>());
        foreach (var points in tracks.Select(t => t.Points))
        {
            for (var i = 1; i < points.Count; i++)
            {
                var days = Period.DaysBetween(points[i - 1].On, points[i].On);
                var (cosine, sine) = RidingSeason.Parts(points[i - 1].On, points[i].On);
                rows.Add([cosine / Math.Sqrt(days), sine / Math.Sqrt(days)]);
                right.Add((((double)(points[i].Distance - points[i - 1].Distance).Metres / 20_000) - days) / Math.Sqrt(days));
            }
        }

        var wave = Matrix<double>.Build.DenseOfRows(rows).QR().Solve(Vector<double>.Build.DenseOfEnumerable(right));
        Assert.Equal(-0.3, wave[0], 1e-3);
        Assert.Equal(wave[0], fleet.Season.Cosine, 0.01);
        Assert.Equal(wave[1], fleet.Season.Sine, 0.01);
    }

    /// <summary>F of 2 and 20, upper five in a hundred: 3.4928 (NIST/SEMATECH e-Handbook, table 1.3.6.7.3; from memory).</summary>
    [Fact]
    public void The_F_distribution_of_the_test_is_the_tables() =>
        Assert.Equal(0.05, 1 - FisherSnedecor.CDF(2, 20, 3.4928), 1e-5);

    private static OdometerTrack Exact(RidingSeason season, int first) => OdometerTrack.Of(
        new OdometerPoint(Start.PlusDays(first), Distance.Zero),
        Enumerable.Range(1, 16).Select(i => Start.PlusDays(first + (46 * i)))
            .Select(day => new OdometerPoint(day, Distance.FromMetres((decimal)(20_000 * season.DaysBetween(Start.PlusDays(first), day))))));

    /// <summary>Rates about 5000 km a year, e^0.6 up or down; stretches gamma with relative variance 10 days to their length.</summary>
    private static IEnumerable<OdometerTrack> Riders(int count, RidingSeason season, int seed = 7)
    {
        var random = new MersenneTwister(seed);
        for (var rider = 0; rider < count; rider++)
        {
            var perDay = 13_700 * Math.Exp(0.6 * Normal.Sample(random, 0, 1));
            var (from, metres) = (Start.PlusDays(random.Next(0, 365)), 0.0);
            var points = new List<OdometerPoint> { new(from, Distance.Zero) };
            for (var reading = 0; reading < 10; reading++)
            {
                var to = points[^1].On.PlusDays(random.Next(30, 150));
                var days = season.DaysBetween(points[^1].On, to);
                metres += Gamma.Sample(random, days / 10, days / 10) * perDay * days;
                points.Add(new OdometerPoint(to, Distance.FromMetres((decimal)Math.Round(metres))));
            }

            yield return OdometerTrack.Of(points[0], points.Skip(1));
        }
    }
}
