using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Intervals;

public class OdometerTrackTests
{
    private static readonly LocalDate Start = new(2024, 3, 1);

    [Fact]
    public void A_passed_distance_is_dated_between_the_readings_around_it()
    {
        var track = Track((100, 1_000), (0, 0), (200, 3_000));

        var reached = track.Reached(Distance.FromKilometres(1_500));

        Assert.Equal((Start.PlusDays(125), new DaySpan(Start.PlusDays(100), Start.PlusDays(200))), reached);
    }

    [Fact]
    public void The_reading_itself_is_the_day_when_it_shows_exactly_the_distance() =>
        Assert.Equal(Start.PlusDays(100), Track((100, 1_000), (200, 3_000)).Reached(Distance.FromKilometres(1_000))?.On);

    [Fact]
    public void What_is_ahead_is_not_reached() => Assert.Null(Track((100, 1_000)).Reached(Distance.FromMetres(1_000_001)));

    [Fact]
    public void What_lies_before_the_start_was_reached_by_then() =>
        Assert.Equal(Start, Track((100, 1_000)).Reached(Distance.FromKilometres(-500))?.On);

    [Fact]
    public void Of_one_day_the_furthest_counts()
    {
        var track = Track((100, 1_000), (100, 1_040), (100, 1_010));

        Assert.Equal(2, track.Points.Count);
        Assert.Equal(Distance.FromKilometres(1_040), track.Last.Distance);
    }

    private static OdometerTrack Track(params (int Day, int Km)[] readings) => OdometerTrack.Of(
        new OdometerPoint(Start, Distance.Zero),
        readings.Select(r => new OdometerPoint(Start.PlusDays(r.Day), Distance.FromKilometres(r.Km))));
}
