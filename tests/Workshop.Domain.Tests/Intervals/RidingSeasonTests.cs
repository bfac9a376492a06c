using CsCheck;
using MathNet.Numerics.Integration;
using NodaTime;
using Workshop.Domain.Intervals;

namespace Workshop.Domain.Tests.Intervals;

public class RidingSeasonTests
{
    private static readonly Gen<RidingSeason> Season = Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], RidingSeason.Of);

    private static readonly Gen<LocalDate> Day = Gen.Int[0, 12_000].Select(d => new LocalDate(1995, 1, 1).PlusDays(d));

    [Fact]
    public void Days_of_the_calendar_and_riding_days_are_each_others_way_back() =>
        Gen.Select(Season, Day, Gen.Int[1, 3_000]).Sample((season, from, days) =>
            Assert.Equal(days, season.CalendarDays(from, season.DaysBetween(from, from.PlusDays(days))), 1e-4), iter: 2_000);

    /// <summary>The wave is integrated in closed form; Gauss-Legendre of MathNet.Numerics integrates it by points.</summary>
    [Fact]
    public void Riding_days_are_the_integral_of_the_wave() => Gen.Select(Season, Day, Gen.Int[1, 700]).Sample((season, from, days) =>
    {
        var turn = 2 * Math.PI / (double)RidingRate.DaysPerYear;
        var start = Period.DaysBetween(new LocalDate(2000, 1, 1), from);
        var integral = GaussLegendreRule.Integrate(
            day => 1 + (season.Cosine * Math.Cos(turn * day)) + (season.Sine * Math.Sin(turn * day)), start, start + days, 64);

        Assert.Equal(integral, season.DaysBetween(from, from.PlusDays(days)), 1e-6);
    }, iter: 300);

    [Fact]
    public void Four_hundred_years_have_as_many_riding_days_as_days() => Season.Sample(season => Assert.Equal(
        146_097, season.DaysBetween(new LocalDate(2000, 3, 1), new LocalDate(2400, 3, 1)), 1e-3), iter: 100);

    [Fact]
    public void No_day_counts_less_than_nothing() => Assert.Equal(RidingSeason.LargestAmplitude, RidingSeason.Of(3, -4).Amplitude, 1e-12);

    [Fact]
    public void Where_winters_rest_spring_comes_sooner_than_the_same_days_of_autumn()
    {
        var season = RidingSeason.Of(-0.8, 0);

        Assert.True(season.CalendarDays(new LocalDate(2026, 4, 1), 60) < 60);
        Assert.True(season.CalendarDays(new LocalDate(2026, 10, 15), 60) > 100);
    }
}
