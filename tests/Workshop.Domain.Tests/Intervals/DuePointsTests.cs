using CsCheck;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Intervals;

public class DuePointsTests
{
    private static readonly TogetherWithin Early = new(Distance.FromKilometres(500), 30);

    private static readonly OdometerPoint New = new(new LocalDate(2024, 1, 31), Distance.Zero);

    private static readonly ServiceInterval Grid = new()
    {
        Every = Distance.FromKilometres(12_000), EveryMonths = 12, First = Distance.FromKilometres(1_000), FirstMonths = 2,
        Counting = CountingRule.OnFixedGrid,
    };

    [Theory]
    [InlineData(400, 1_000)]
    [InlineData(500, 12_000)]
    [InlineData(1_400, 12_000)]
    [InlineData(11_499, 12_000)]
    [InlineData(11_500, 24_000)]
    [InlineData(14_000, 24_000)]
    [InlineData(23_800, 36_000)]
    public void On_a_grid_it_is_due_at_the_next_multiple_and_a_little_early_counts_for_the_point_ahead(int doneAt, int dueAt) =>
        Assert.Equal(dueAt, Next(Grid, new OdometerPoint(New.On.PlusDays(200), Distance.FromKilometres(doneAt))).At!.Value.Kilometres);

    [Fact]
    public void A_grid_starts_where_the_engine_stood_at_zero()
    {
        var start = new OdometerPoint(new LocalDate(2024, 1, 31), Distance.FromKilometres(7_300));

        Assert.Equal(
            (8_300m, 19_300m),
            (DuePoints.Next(Grid, start, null, Early).At!.Value.Kilometres,
             DuePoints.Next(Grid, start, new OdometerPoint(new LocalDate(2024, 5, 1), Distance.FromKilometres(8_500)), Early).At!.Value.Kilometres));
    }

    /// <summary>31 January, 28 or 29 February, 31 March: every point from the start, not from the one before.</summary>
    [Fact]
    public void On_a_grid_the_day_of_the_month_comes_back_and_counted_from_what_was_done_it_does_not()
    {
        var monthly = new ServiceInterval { EveryMonths = 1, Counting = CountingRule.OnFixedGrid };
        var (none, days) = (new TogetherWithin(Distance.Zero, 0), new List<LocalDate?>());
        for (var done = New.On; days.Count < 4; done = days[^1]!.Value)
        {
            days.Add(DuePoints.Next(monthly, New, new OdometerPoint(done, Distance.Zero), none).On);
        }

        Assert.Equal([new(2024, 2, 29), new(2024, 3, 31), new(2024, 4, 30), new(2024, 5, 31)], days);
        var fromDone = monthly with { Counting = CountingRule.FromLastDone };
        Assert.Equal(new LocalDate(2024, 3, 29), DuePoints.Next(fromDone, New, new OdometerPoint(new LocalDate(2024, 2, 29), Distance.Zero), none).On);
    }

    /// <summary>Beside NodaTime alone: the first of start.PlusMonths(k n) after the day, by trying every k.</summary>
    [Fact]
    public void Grid_days_are_NodaTimes_month_arithmetic_from_the_start() =>
        Gen.Select(Gen.Int[0, 20_000], Gen.Int[1, 60], Gen.Int[0, 9_000], Gen.Int[0, 60]).Sample((first, months, later, early) =>
        {
            var start = new LocalDate(1990, 1, 1).PlusDays(first);
            var done = start.PlusDays(later);
            var interval = new ServiceInterval { EveryMonths = months, Counting = CountingRule.OnFixedGrid };

            var due = DuePoints.Next(interval, new OdometerPoint(start, Distance.Zero), new OdometerPoint(done, Distance.Zero), new TogetherWithin(Distance.Zero, early)).On;

            Assert.Equal(Enumerable.Range(1, 10_000).Select(k => start.PlusMonths(k * months)).First(day => day > done.PlusDays(early)), due);
        }, iter: 3_000);

    /// <summary>
    /// RFC 5545, 3.3.10, as Ical.Net expands it: FREQ=MONTHLY from a day that every month has is the same grid. From the 29th on the
    /// standard leaves out months without that day, where a workshop takes their last; BYMONTHDAY=-1 says so for the 31st.
    /// </summary>
    [Theory]
    [InlineData(2024, 1, 15, "FREQ=MONTHLY;INTERVAL=6;COUNT=8", 6)]
    [InlineData(2024, 2, 28, "FREQ=MONTHLY;INTERVAL=1;COUNT=20", 1)]
    [InlineData(2023, 5, 1, "FREQ=YEARLY;COUNT=6", 12)]
    [InlineData(2023, 5, 1, "FREQ=MONTHLY;INTERVAL=24;COUNT=6", 24)]
    [InlineData(2024, 1, 31, "FREQ=MONTHLY;INTERVAL=1;BYMONTHDAY=-1;COUNT=20", 1)]
    [InlineData(2024, 8, 31, "FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=-1;COUNT=8", 6)]
    public void Recurrences_of_RFC_5545_are_the_same_grid_where_both_say_the_same(int y, int m, int d, string rule, int months)
    {
        var start = new LocalDate(y, m, d);
        var calendar = new CalendarEvent { Start = new CalDateTime(y, m, d), RecurrenceRule = new RecurrencePattern(rule) };
        var recurring = calendar.GetOccurrences(new CalDateTime(y, m, d)).Take(40)
            .Select(o => LocalDate.FromDateOnly(o.Period.StartTime.Date)).Skip(1).ToList();

        var interval = new ServiceInterval { EveryMonths = months, Counting = CountingRule.OnFixedGrid };
        var grid = new List<LocalDate>();
        for (var done = start; grid.Count < recurring.Count; done = grid[^1])
        {
            grid.Add(DuePoints.Next(interval, new OdometerPoint(start, Distance.Zero), new OdometerPoint(done, Distance.Zero), new TogetherWithin(Distance.Zero, 0)).On!.Value);
        }

        Assert.True(recurring.Count >= 5);
        Assert.Equal(recurring, grid);
    }

    [Fact]
    public void A_grid_point_is_always_ahead_and_never_more_than_one_interval() =>
        Gen.Select(Gen.Int[100, 60_000], Gen.Int[0, 400_000], Gen.Enum<OdometerUnit>()).Sample((every, done, unit) =>
        {
            var interval = new ServiceInterval { Every = unit.ToDistance(every), Counting = CountingRule.OnFixedGrid };
            var at = unit.ToDistance(done);

            var due = DuePoints.Next(interval, New, new OdometerPoint(New.On, at), new TogetherWithin(Distance.Zero, 0)).At!.Value;

            Assert.True(due > at && due - at <= interval.Every!.Value);
            Assert.Equal(0, due.Metres % interval.Every.Value.Metres);
            Assert.Equal(unit.CountOf(due), unit.CountOf(due + Distance.Zero));
            Assert.Equal(due, unit.ToDistance(unit.CountOf(due)));
        }, iter: 2_000);

    private static DuePoint Next(ServiceInterval interval, OdometerPoint done) => DuePoints.Next(interval, New, done, Early);
}
