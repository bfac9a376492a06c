using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Features.Shared.Drawings;
using Xunit;

namespace Workshop.Web.Tests.Bookings;

public sealed class TimeBarsTests
{
    private static readonly WorkshopTime Vienna = new(DateTimeZoneProviders.Tzdb["Europe/Vienna"]);

    [Fact]
    public void A_bar_lies_where_its_span_lies_in_the_day_and_ends_at_the_edge()
    {
        var day = new Interval(Instant.FromUtc(2026, 3, 2, 7, 0), Instant.FromUtc(2026, 3, 2, 17, 0));

        var bars = TimeBars.Of(Vienna, day,
            [new("Bay 1", [(Hours(day, 2.5, 5), "1001"), (Hours(day, -3, 1), "1002"), (Hours(day, 9, 12), "1003"), (Hours(day, 11, 12), "none")])], "words");

        const decimal Hour = (TimeBars.Width - TimeBars.NameWidth - 10) / 10;
        Assert.Equal(
            [(TimeBars.NameWidth + (2.5m * Hour), 2.5m * Hour), (TimeBars.NameWidth, Hour), (TimeBars.NameWidth + (9 * Hour), Hour)],
            bars.Rows.Single().Bars.Select(b => (b.X, b.Width)));
        Assert.Equal(["08:00", "09:00", "10:00"], bars.Ticks.Take(3).Select(t => t.Text));
        Assert.Equal(TimeBars.NameWidth, bars.Ticks[0].X);
    }

    [Fact]
    public void On_the_night_of_the_change_the_skipped_hour_has_no_tick()
    {
        var night = new Interval(Instant.FromUtc(2026, 3, 28, 23, 0), Instant.FromUtc(2026, 3, 29, 3, 0));

        Assert.Equal(["00:00", "01:00", "03:00", "04:00", "05:00"], TimeBars.Of(Vienna, night, [], "words").Ticks.Select(t => t.Text));
    }

    [Fact]
    public void A_label_that_does_not_fit_is_left_to_the_table_and_a_long_name_is_cut()
    {
        var day = new Interval(Instant.FromUtc(2026, 3, 2, 7, 0), Instant.FromUtc(2026, 3, 2, 17, 0));

        var row = TimeBars.Of(Vienna, day,
            [new("A holder for the sprocket of the intake cam", [(Hours(day, 0, 0.25), "1001"), (Hours(day, 1, 2), "1002")])], "words").Rows.Single();

        Assert.Equal([false, true], row.Bars.Select(b => b.LabelFits));
        Assert.Equal("A holder for the sprocket…", row.Name);
    }

    private static Interval Hours(Interval day, double from, double to) =>
        new(day.Start + Duration.FromHours(from), day.Start + Duration.FromHours(to));
}
