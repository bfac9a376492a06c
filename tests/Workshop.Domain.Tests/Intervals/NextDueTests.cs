using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Intervals;

public class NextDueTests
{
    private static readonly OdometerPoint New = new(new LocalDate(2024, 1, 31), Distance.Zero);

    private static readonly ServiceInterval Oil = new()
    {
        Every = Distance.FromKilometres(10_000), EveryMonths = 12, First = Distance.FromKilometres(1_000), FirstMonths = 6,
    };

    [Fact]
    public void The_first_occurrence_counts_from_new()
    {
        var due = Due(Oil, null, Track((30, 300)), Rate(10))!;

        Assert.Equal(Distance.FromKilometres(1_000), due.At);
        Assert.Equal(new LocalDate(2024, 7, 31), due.On);
        Assert.Equal(New.On.PlusDays(100), due.ExpectedOn);
    }

    [Fact]
    public void The_next_ones_count_from_when_it_was_last_done()
    {
        var done = new OdometerPoint(new LocalDate(2024, 5, 2), Distance.FromKilometres(1_080));

        var due = Due(Oil, done, Track((92, 1_080)), Rate(10))!;

        Assert.Equal(Distance.FromKilometres(11_080), due.At);
        Assert.Equal(new LocalDate(2025, 5, 2), due.On);
        Assert.Equal(due.On, due.ExpectedOn);
    }

    [Fact]
    public void Without_a_first_occurrence_the_usual_interval_holds_from_new()
    {
        var due = Due(new ServiceInterval { Every = Distance.FromKilometres(24_000) }, null, Track((100, 2_000)), Rate(20))!;

        Assert.Equal(Distance.FromKilometres(24_000), due.At);
        Assert.Null(due.On);
        Assert.Equal(New.On.PlusDays(1_200), due.ExpectedOn);
    }

    [Fact]
    public void What_is_done_once_and_for_all_is_not_due_again()
    {
        var once = new ServiceInterval { First = Distance.FromKilometres(1_000), Once = true };

        Assert.NotNull(Due(once, null, Track((30, 300)), Rate(10)));
        Assert.Null(Due(once, new OdometerPoint(New.On.PlusDays(90), Distance.FromKilometres(950)), Track((90, 950)), Rate(10)));
    }

    [Fact]
    public void An_interval_without_figures_is_never_due() => Assert.Null(Due(new ServiceInterval(), null, Track(), Rate(10)));

    [Fact]
    public void The_calendar_alone_has_no_span()
    {
        var due = Due(new ServiceInterval { EveryMonths = 24 }, null, Track(), Rate(10))!;

        Assert.Equal(new LocalDate(2026, 1, 31), due.ExpectedOn);
        Assert.Null(due.Span);
    }

    /// <summary>
    /// The quantiles of a log-normal time, from MathNet.Numerics: 200 days to go at the median rate, a fifth of uncertainty in the rate,
    /// and days that are not alike.
    /// </summary>
    [Fact]
    public void The_span_is_from_one_in_ten_to_nine_in_ten()
    {
        var rate = new RidingRate(Distance.FromKilometres(10), 0.04, 16, RidingSeason.None, RateBasis.OwnReadings, 5);

        var due = Due(new ServiceInterval { Every = Distance.FromKilometres(3_000) }, null, Track((100, 1_000)), rate)!;

        var time = new MathNet.Numerics.Distributions.LogNormal(Math.Log(200), Math.Sqrt(0.04 + Math.Log(1 + (16.0 / 200))));
        Assert.Equal(New.On.PlusDays(300), due.ExpectedOn);
        Assert.Equal(
            new DaySpan(
                New.On.PlusDays(100 + (int)Math.Floor(time.InverseCumulativeDistribution(0.1))),
                New.On.PlusDays(100 + (int)Math.Ceiling(time.InverseCumulativeDistribution(0.9)))),
            due.Span);
    }

    [Fact]
    public void A_date_before_which_it_is_not_due_holds_for_distance_and_calendar_alike()
    {
        var after = New.On.PlusDays(500);
        var both = new ServiceInterval { Every = Distance.FromKilometres(3_000), EveryMonths = 12, AfterDate = after };

        Assert.Equal(after, Due(both, null, Track((100, 1_000)), Rate(10))!.ExpectedOn);
        Assert.Equal(after, Due(both with { EveryMonths = null }, null, Track((100, 1_000)), Rate(10))!.ExpectedOn);
        Assert.Null(Due(both with { EveryMonths = null }, null, Track((100, 1_000)), Rate(10))!.On);
    }

    [Fact]
    public void Once_after_a_date_is_due_on_it_until_it_was_done()
    {
        var recall = new ServiceInterval { Once = true, AfterDate = New.On.PlusDays(40) };

        Assert.Equal(New.On.PlusDays(40), Due(recall, null, Track((100, 1_000)), Rate(10))!.On);
        Assert.Null(Due(recall, new OdometerPoint(New.On.PlusDays(50), Distance.FromKilometres(500)), Track((100, 1_000)), Rate(10)));
    }

    [Fact]
    public void A_motorcycle_that_stands_is_due_beyond_the_horizon_and_the_end_is_left_open()
    {
        var due = Due(new ServiceInterval { Every = Distance.FromKilometres(3_000) }, null, Track((100, 1_000)), Rate(0))!;

        Assert.True(due.IsOpenEnded);
        Assert.Equal(New.On.PlusDays(100 + NextDue.HorizonDays), due.ExpectedOn);
        Assert.Equal(due.ExpectedOn, due.Span!.Value.First);
    }

    [Fact]
    public void A_motorcycle_that_stands_is_still_due_by_the_calendar()
    {
        var due = Due(Oil, null, Track((30, 300)), Rate(0))!;

        Assert.False(due.IsOpenEnded);
        Assert.Equal(new LocalDate(2024, 7, 31), due.ExpectedOn);
    }

    [Fact]
    public void A_distance_that_readings_have_passed_is_dated_by_them_not_by_the_rate()
    {
        var due = Due(new ServiceInterval { Every = Distance.FromKilometres(1_500) }, null, Track((100, 1_000), (200, 2_000)), Rate(90))!;

        Assert.Equal(New.On.PlusDays(150), due.ExpectedOn);
        Assert.Equal(new DaySpan(New.On.PlusDays(100), New.On.PlusDays(200)), due.Span);
    }

    /// <summary>
    /// NodaTime user guide, "Date and time arithmetic": adding months truncates the day to the end of the month. The dates
    /// are from that page as remembered (30 March less a month is 28 February) and from the calendar.
    /// </summary>
    [Theory]
    [InlineData(2023, 1, 31, 1, 2023, 2, 28)]
    [InlineData(2024, 1, 31, 1, 2024, 2, 29)]
    [InlineData(2024, 2, 29, 12, 2025, 2, 28)]
    [InlineData(2024, 2, 29, 48, 2028, 2, 29)]
    [InlineData(2024, 8, 31, 6, 2025, 2, 28)]
    [InlineData(2024, 3, 31, 6, 2024, 9, 30)]
    public void A_day_that_the_month_lacks_becomes_its_last(int y, int m, int d, int months, int dueY, int dueM, int dueD)
    {
        var start = new OdometerPoint(new LocalDate(y, m, d), Distance.Zero);
        var track = OdometerTrack.Of(start, []);

        var due = NextDue.Of(new ServiceInterval { EveryMonths = months }, start, null, track, Rate(10));

        Assert.Equal(new LocalDate(dueY, dueM, dueD), due?.On);
    }

    /// <summary>
    /// One international mile is 1.609344 km exactly: NIST Special Publication 811 (2008), appendix B.8, in boldface, which
    /// marks exact factors; and NIST Handbook 44, appendix C (from memory, both).
    /// </summary>
    [Fact]
    public void Miles_are_exact_to_the_metre()
    {
        var done = new OdometerPoint(New.On.PlusDays(300), Distance.FromMiles(11_998));
        var due = Due(new ServiceInterval { Every = Distance.FromMiles(4_000) }, done, OdometerTrack.Of(New, [done]), Rate(10))!;

        Assert.Equal(15_998, OdometerUnit.Miles.CountOf(due.At!.Value));
        Assert.Equal(15_998m * 1609.344m, due.At.Value.Metres);
        Assert.Equal(6437.376m, Distance.FromMiles(4_000).Kilometres);
    }

    private static DueNext? Due(ServiceInterval interval, OdometerPoint? done, OdometerTrack track, RidingRate rate) =>
        NextDue.Of(interval, New, done, track, rate);

    private static OdometerTrack Track(params (int Day, int Km)[] readings) => OdometerTrack.Of(
        New, readings.Select(r => new OdometerPoint(New.On.PlusDays(r.Day), Distance.FromKilometres(r.Km))));

    /// <summary>Known for certain, every day alike.</summary>
    private static RidingRate Rate(decimal km) => new(Distance.FromKilometres(km), 0, 0, RidingSeason.None, RateBasis.OwnReadings, 5);
}
