using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;

namespace Workshop.Domain.Tests.Intervals;

public class StandingReadingsTests
{
    private static readonly LocalDate Day = new(2025, 6, 1);

    [Fact]
    public void A_corrected_reading_no_longer_stands_and_what_was_done_at_it_moves_along()
    {
        var (typed, mended, again) = (Reading(1, 123_000, null), Reading(2, 12_030, 1), Reading(3, 12_300, 2));

        var standing = StandingReadings.Of([again, typed, mended]);

        Assert.Equal([again], standing.Readings);
        Assert.Equal(Point(12_300), standing.Corrected(Point(123_000)));
        Assert.Equal(Point(12_300), standing.Corrected(Point(12_030)));
    }

    [Fact]
    public void What_was_done_at_a_reading_that_stands_stays()
    {
        // The same figure once typed, corrected, and then typed again by somebody who read it so.
        var standing = StandingReadings.Of([Reading(1, 12_300, null), Reading(2, 13_200, 1), Reading(3, 12_300, null)]);

        Assert.Equal(Point(12_300), standing.Corrected(Point(12_300)));
    }

    [Fact]
    public void What_no_reading_stands_behind_stays() =>
        Assert.Equal(Point(777), StandingReadings.Of([Reading(1, 12_300, null)]).Corrected(Point(777)));

    private static OdometerPoint Point(int km) => new(Day, Distance.FromKilometres(km));

    private static OdometerReading Reading(int id, int km, int? supersedes) => new()
    {
        Id = Id(id), OdometerId = Id(90), MotorcycleId = Id(91), ReadOn = Day, Count = km, Unit = OdometerUnit.Kilometres,
        Distance = Distance.FromKilometres(km), SupersedesId = supersedes is { } other ? Id(other) : null,
        MeasuredBy = Id(92), EnteredBy = Id(92), EnteredAt = Instant.FromUtc(2025, 6, 1, 9, 0),
    };

    private static Guid Id(int number) => new(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 1]);
}
