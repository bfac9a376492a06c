using System.Text.Json;
using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Features.Shared.Drawings;
using Xunit;

namespace Workshop.Web.Tests.Diary;

public sealed class PhaseBarsTests
{
    private static readonly WorkshopTime Vienna = new(DateTimeZoneProviders.Tzdb["Europe/Vienna"]);
    private static readonly LocalDate Monday = new(2026, 3, 2);

    [Fact]
    public void A_bar_that_goes_on_the_next_day_is_drawn_in_both_and_only_its_beginning_can_be_dragged()
    {
        var bars = Of([Day(Monday), Day(Monday.PlusDays(1))], Taken(At(Monday, 16), At(Monday.PlusDays(1), 10)));

        var drawn = Assert.Single(bars.Rows).Bars;
        Assert.Equal([true, false], drawn.Select(b => b.Of.Movable));
        Assert.Equal(bars.Columns[0].X + bars.Columns[0].Width, drawn[0].X + drawn[0].Width);
        Assert.Equal(bars.Columns[1].X, drawn[1].X);
    }

    [Fact]
    public void A_closed_day_keeps_its_place_but_not_its_hours()
    {
        var bars = Of([Day(Monday), new TimeStretch(Monday.PlusDays(1), Vienna.WholeDay(Monday.PlusDays(1)), "Tu", Narrow: true)]);

        Assert.True(bars.Columns[1].Width < bars.Columns[0].Width / 10);
        Assert.Equal(PhaseBars.Width, decimal.Round(bars.Columns[1].X + bars.Columns[1].Width + 2, 6));
        Assert.All(bars.Ticks, t => Assert.True(t.X < bars.Columns[1].X));
    }

    [Fact]
    public void A_mark_is_a_word_of_the_label_as_far_as_it_fits()
    {
        var wide = Of([Day(Monday)], Taken(At(Monday, 9), At(Monday, 13), "runs late")).Rows[0].Bars[0];
        var narrow = Of([Day(Monday)], Taken(At(Monday, 9), At(Monday, 10), "stands in an absence")).Rows[0].Bars[0];
        var none = Of([Day(Monday)], Taken(At(Monday, 9), At(Monday, 9) + Duration.FromMinutes(5))).Rows[0].Bars[0];

        Assert.Equal(("1001 work: runs late", "1001", null), (wide.Label, narrow.Label, none.Label));
    }

    [Fact]
    public void Bars_of_one_line_never_overlap_where_their_spans_do_not() =>
        Gen.Int[0, 600].Array[2, 12].Sample(
            cuts =>
            {
                var edges = cuts.Order().Select(m => At(Monday, 8) + Duration.FromMinutes(m)).ToList();
                var taken = edges.Zip(edges.Skip(1)).Where(e => e.First < e.Second).Select(e => Taken(e.First, e.Second)).ToArray();
                var drawn = Of([Day(Monday), Day(Monday.PlusDays(1))], taken).Rows[0].Bars.OrderBy(b => b.X).ToList();
                Assert.All(drawn.Zip(drawn.Skip(1)), pair => Assert.True(pair.First.X + pair.First.Width <= pair.Second.X + 0.000001m));
            },
            iter: 300);

    [Fact]
    public void The_map_for_dropping_says_day_and_minute_of_the_wall_clock_in_summer_too()
    {
        var summer = new LocalDate(2026, 7, 1);
        var map = JsonElement.Parse(Of([Day(summer)]).DropMap);

        var column = map.GetProperty("columns")[0];
        Assert.Equal(("2026-07-01", 480, 540), (column.GetProperty("day").GetString(), column.GetProperty("from").GetInt32(), column.GetProperty("minutes").GetInt32()));
        Assert.Equal(PhaseBars.HeadHeight, map.GetProperty("rows")[0].GetProperty("y").GetDecimal());
    }

    private static PhaseBars Of(TimeStretch[] stretches, params PhaseTaken[] taken) =>
        PhaseBars.Of(Vienna, stretches, [new PhaseBarRow("Bay 1", Guid.Empty, [], taken)], "words");

    private static TimeStretch Day(LocalDate day) => new(day, new Interval(At(day, 8), At(day, 17)), "day");

    private static PhaseTaken Taken(Instant from, Instant until, string? mark = null) =>
        new(new Interval(from, until), VisitPhase.Work, 1001, mark, Movable: true);

    private static Instant At(LocalDate day, int hour) => (day + new LocalTime(hour, 0)).InZoneLeniently(Vienna.Zone).ToInstant();
}
