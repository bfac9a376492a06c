using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

public class WorkingWeekTests
{
    private static readonly OpeningHours[] Opening =
        [new OpeningHours { Weekday = IsoDayOfWeek.Monday, OpensAt = new LocalTime(8, 0), ClosesAt = new LocalTime(17, 0) }];

    [Fact]
    public void A_day_with_breaks_that_follow_each_other_can_be_worked()
    {
        Assert.Empty(Faults("08:00-16:30", asOpeningHours: false, "09:30-09:45", "12:00-12:30", "12:30-12:45", "-"));
        Assert.Empty(Faults("-", asOpeningHours: true, "12:00-12:30"));
        Assert.Empty(Faults("-", asOpeningHours: false));
    }

    [Theory]
    [InlineData("16:30-08:00", "", "days[0].endsAt is 08:00, which is not after days[0].startsAt, 16:30; a later time of the same day is allowed.")]
    [InlineData("08:00-08:00", "", "days[0].endsAt is 08:00, which is not after days[0].startsAt, 08:00; a later time of the same day is allowed.")]
    [InlineData("08:00-", "", "days[0].endsAt is empty, but days[0].startsAt is 08:00: give both, or neither.")]
    [InlineData("08:00-16:00", "12:30-12:00", "days[0].breaks[0].endsAt is 12:00, which is not after days[0].breaks[0].startsAt, 12:30; a later time of the same day is allowed.")]
    [InlineData("08:00-16:00", "-12:00", "days[0].breaks[0].startsAt is empty, but days[0].breaks[0].endsAt is 12:00: give both, or neither.")]
    [InlineData("08:00-16:00", "15:45-16:15", "days[0].breaks[0] is 15:45 to 16:15: the hours of Monday are 08:00 to 16:00; a break lies within them.")]
    [InlineData("08:00-16:00", "12:15-12:45,12:00-12:30", "days[0].breaks[0] is 12:15 to 12:45: it overlaps the break 12:00 to 12:30 of that Monday; breaks follow each other.")]
    [InlineData("-", "12:00-12:30", "days[0].breaks[0] is 12:00 to 12:30: Monday has no hours to take a break from.")]
    public void What_cannot_be_worked_is_said(string hours, string breaks, string sentence) =>
        Assert.Equal([sentence], Faults(hours, asOpeningHours: false, breaks.Split(',', StringSplitOptions.RemoveEmptyEntries)));

    [Fact]
    public void Whoever_works_the_opening_hours_has_none_of_his_own_and_breaks_within_those()
    {
        Assert.Equal(
            ["days[0].startsAt is given, but the technician is said to work the opening hours; give breaks only, or own hours for each day."],
            Faults("09:00-12:00", asOpeningHours: true));
        Assert.Equal(
            ["days[0].breaks[0] is 07:45 to 08:15: the hours of Monday are 08:00 to 17:00; a break lies within them."],
            Faults("-", asOpeningHours: true, "07:45-08:15"));
    }

    private static IEnumerable<string> Faults(string hours, bool asOpeningHours, params string[] breaks) =>
        WorkingWeek.Faults(
            [new EnteredDay("days[0]", IsoDayOfWeek.Monday, Stretch(hours),
                [.. breaks.Select((b, i) => new EnteredBreak($"days[0].breaks[{i}]", Stretch(b).From, Stretch(b).Until))])],
            asOpeningHours,
            Opening).Select(f => f.Sentence);

    private static (LocalTime? From, LocalTime? Until) Stretch(string text) =>
        text.Split('-') is [var from, var until] ? (Time(from), Time(until)) : (null, null);

    private static LocalTime? Time(string text) =>
        text.Length == 0 ? null : LocalTime.FromMinutesSinceMidnight((int.Parse(text[..2], null) * 60) + int.Parse(text[3..], null));
}
