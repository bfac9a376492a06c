using System.Globalization;
using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

/// <summary>
/// Weeks by ISO 8601-1:2019, 3.1.1.23: week 1 is that of the year's first Thursday. The examples 2008-12-29 = 2009-W01-1 and 2010-01-03 =
/// 2009-W53-7 are those of the standard's predecessor (from memory); every other day is compared with the class library's own calendar.
/// </summary>
public class IsoWeekTests
{
    [Theory]
    [InlineData("2008-12-29", "2009-W01")]
    [InlineData("2010-01-03", "2009-W53")]
    [InlineData("2026-12-31", "2026-W53")]
    [InlineData("2027-01-04", "2027-W01")]
    public void Days_around_the_new_year_lie_in_the_week_that_the_standard_says(string day, string week) =>
        Assert.Equal(week, IsoWeek.Of(Day(day)).ToString());

    [Fact]
    public void Every_day_lies_in_the_week_of_the_class_library_and_the_week_reads_back() =>
        Gen.Int[-20_000, 40_000].Sample(
            days =>
            {
                var day = new LocalDate(2000, 1, 1).PlusDays(days);
                var date = new DateTime(day.Year, day.Month, day.Day, 0, 0, 0, DateTimeKind.Unspecified);
                var week = IsoWeek.Of(day);
                Assert.Equal((ISOWeek.GetYear(date), ISOWeek.GetWeekOfYear(date)), (week.Year, week.Number));
                Assert.Contains(day, week.Days);
                Assert.Equal(IsoDayOfWeek.Monday, week.Monday.DayOfWeek);
                Assert.Equal(week, week.Next.Previous);
                Assert.True(IsoWeek.TryParse(week.ToString(), out var read) && read == week);
            },
            iter: 2000);

    [Theory]
    [InlineData("2025-W53")]
    [InlineData("2026-W54")]
    [InlineData("2026-W00")]
    [InlineData("2026-W5")]
    [InlineData("2026W49")]
    [InlineData("2026-49")]
    [InlineData("")]
    [InlineData(null)]
    public void What_is_no_week_of_that_year_is_not_read(string? text) => Assert.False(IsoWeek.TryParse(text, out _));

    private static LocalDate Day(string text) => LocalDate.FromDateTime(DateTime.Parse(text, CultureInfo.InvariantCulture));
}
