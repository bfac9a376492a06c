using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

/// <summary>
/// Vienna, 2026. Summer time begins at 01:00 UTC on the last Sunday of March and ends at 01:00 UTC on the last Sunday of
/// October (Directive 2000/84/EC, articles 2 and 3): 29 March and 25 October 2026.
/// </summary>
public class OpeningCalendarTests
{
    private static readonly WorkshopTime Vienna = new(DateTimeZoneProviders.Tzdb["Europe/Vienna"]);
    private static readonly LocalDate SpringSunday = new(2026, 3, 29);
    private static readonly LocalDate AutumnSunday = new(2026, 10, 25);

    private static readonly OpeningCalendar Calendar = new(
        Vienna,
        [.. Enumerable.Range(1, 5).Select(d => Open((IsoDayOfWeek)d, 8, 17)), Open(IsoDayOfWeek.Sunday, 1, 5)],
        [new Holiday { Day = new LocalDate(2026, 5, 1), Name = "Labour Day" }]);

    [Fact]
    public void The_same_hour_of_the_wall_clock_is_another_instant_in_summer()
    {
        Assert.Equal(Instant.FromUtc(2026, 3, 27, 7, 0), Calendar.OpenOn(new LocalDate(2026, 3, 27))?.Start);
        Assert.Equal(Instant.FromUtc(2026, 3, 30, 6, 0), Calendar.OpenOn(new LocalDate(2026, 3, 30))?.Start);
    }

    [Fact]
    public void Hours_across_the_change_are_as_long_as_they_are()
    {
        Assert.Equal(Duration.FromHours(3), Calendar.OpenOn(SpringSunday)?.Duration);
        Assert.Equal(Duration.FromHours(5), Calendar.OpenOn(AutumnSunday)?.Duration);
        Assert.Equal(Duration.FromHours(23), Vienna.WholeDay(SpringSunday).Duration);
        Assert.Equal(Duration.FromHours(25), Vienna.WholeDay(AutumnSunday).Duration);
    }

    [Fact]
    public void A_time_that_the_clocks_skip_is_refused_and_one_that_comes_twice_is_the_first()
    {
        var skipped = Vienna.InstantOf("time", SpringSunday, new LocalTime(2, 30));
        var twice = Vienna.InstantOf("time", AutumnSunday, new LocalTime(2, 30));

        Assert.Equal("time is 02:30: on 2026-03-29 the clocks skip that time; give one before or after.", skipped.Problem?.Sentence);
        Assert.Equal(Instant.FromUtc(2026, 10, 25, 0, 30), twice.Value);
    }

    [Fact]
    public void Closed_days_say_why()
    {
        Assert.Equal("Labour Day", Calendar.ClosedBecause(new LocalDate(2026, 5, 1)));
        Assert.Equal("Saturday", Calendar.ClosedBecause(new LocalDate(2026, 3, 7)));
        Assert.Null(Calendar.ClosedBecause(new LocalDate(2026, 3, 2)));
        Assert.Equal(new LocalDate(2026, 5, 3), Calendar.FirstOpenDay(new LocalDate(2026, 5, 1)));
        Assert.Null(new OpeningCalendar(Vienna, [], []).FirstOpenDay(new LocalDate(2026, 5, 1)));
    }

    [Theory]
    [InlineData(8, 0, null)]
    [InlineData(16, 59, null)]
    [InlineData(7, 59, "startsAt is 2026-03-02 07:59: the workshop is open on 2026-03-02 from 08:00 to 17:00.")]
    [InlineData(17, 0, "startsAt is 2026-03-02 17:00: the workshop is open on 2026-03-02 from 08:00 to 17:00.")]
    public void A_moment_lies_within_the_hours_of_its_day(int hour, int minute, string? refused)
    {
        var start = Vienna.InstantOf("startsAt", new LocalDate(2026, 3, 2), new LocalTime(hour, minute)).Value;

        Assert.Equal(refused, Calendar.Refuse("startsAt", start)?.Sentence);
    }

    [Fact]
    public void A_workshop_that_never_opens_says_so_without_a_next_day()
    {
        var start = Instant.FromUtc(2026, 3, 2, 8, 0);

        var refused = new OpeningCalendar(Vienna, [], []).Refuse("startsAt", start);

        Assert.Equal("startsAt is 2026-03-02 09:00: the workshop is closed that day (Monday).", refused?.Sentence);
    }

    [Fact]
    public void Free_and_taken_spans_make_up_the_whole_day_and_never_overlap()
    {
        var open = Calendar.OpenOn(new LocalDate(2026, 3, 2))!.Value;
        Gen.Select(Gen.Int[-60, 600], Gen.Int[1, 200]).List[0, 6].Sample(list =>
        {
            var taken = list
                .Select(t => new Interval(open.Start + Duration.FromMinutes(t.Item1), open.Start + Duration.FromMinutes(t.Item1 + t.Item2)))
                .ToList();
            var free = FreeSpans.Of(open, taken);
            for (var minute = open.Start; minute < open.End; minute += Duration.FromMinutes(1))
            {
                if (free.Count(f => f.Contains(minute)) != (taken.Any(t => t.Contains(minute)) ? 0 : 1))
                {
                    return false;
                }
            }

            return free.All(f => f.Duration > Duration.Zero && f.Start >= open.Start && f.End <= open.End);
        });
    }

    private static OpeningHours Open(IsoDayOfWeek day, int from, int to) => new()
    {
        Weekday = day, OpensAt = new LocalTime(from, 0), ClosesAt = new LocalTime(to, 0),
    };
}
