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

    /// <summary>A slip of last year stands against what was read, doubted and confirmed today.</summary>
    [Fact]
    public void A_confirmed_reading_overrules_those_entered_before_that_it_contradicts()
    {
        var wrong = At(1, 120_000, Day, hour: 1, confirmed: false);
        var fits = At(2, 11_000, Day.PlusDays(-90), hour: 2, confirmed: false);
        var confirmed = At(3, 12_500, Day.PlusDays(30), hour: 3, confirmed: true);
        var after = At(4, 13_000, Day.PlusDays(60), hour: 4, confirmed: false);

        Assert.Equal([fits, confirmed, after], StandingReadings.Of([wrong, fits, confirmed, after]).Readings);
    }

    [Fact]
    public void Of_two_confirmed_ones_that_contradict_each_other_the_later_entry_counts()
    {
        var (first, second) = (At(1, 12_500, Day.PlusDays(30), 3, confirmed: true), At(2, 20_000, Day, 4, confirmed: true));

        Assert.Equal([second], StandingReadings.Of([first, second]).Readings);
    }

    private static OdometerReading At(int id, int km, LocalDate on, int hour, bool confirmed) => new()
    {
        Id = Id(id), OdometerId = Id(90), MotorcycleId = Id(91), ReadOn = on, Count = km, Unit = OdometerUnit.Kilometres,
        Distance = Distance.FromKilometres(km), Confirmed = confirmed, MeasuredBy = Id(92), EnteredBy = Id(92),
        EnteredAt = Instant.FromUtc(2026, 1, 1, hour, 0),
    };

    private static OdometerPoint Point(int km) => new(Day, Distance.FromKilometres(km));

    private static OdometerReading Reading(int id, int km, int? supersedes) => new()
    {
        Id = Id(id), OdometerId = Id(90), MotorcycleId = Id(91), ReadOn = Day, Count = km, Unit = OdometerUnit.Kilometres,
        Distance = Distance.FromKilometres(km), SupersedesId = supersedes is { } other ? Id(other) : null,
        MeasuredBy = Id(92), EnteredBy = Id(92), EnteredAt = Instant.FromUtc(2025, 6, 1, 9, 0),
    };

    private static Guid Id(int number) => new(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 1]);
}
