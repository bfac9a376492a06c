using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Intervals;

public class DueWordsTests
{
    private static readonly LocalDate Today = new(2026, 3, 2);

    [Theory]
    [InlineData(0, "today")]
    [InlineData(1, "in 1 day")]
    [InlineData(13, "in 13 days")]
    [InlineData(14, "in 2 weeks")]
    [InlineData(69, "in 9 weeks")]
    [InlineData(70, "in 2 months")]
    [InlineData(720, "in 23 months")]
    [InlineData(731, "in 2 years")]
    [InlineData(-1, "1 day ago")]
    [InlineData(-21, "3 weeks ago")]
    [InlineData(-400, "13 months ago")]
    public void A_day_is_said_from_today(int days, string said) => Assert.Equal(said, DueWords.When(Today.PlusDays(days), Today));

    [Theory]
    [InlineData(900_000, OdometerUnit.Kilometres, "in 900 km")]
    [InlineData(24_000_000, OdometerUnit.Kilometres, "in 24,000 km")]
    [InlineData(999, OdometerUnit.Kilometres, "now")]
    [InlineData(0, OdometerUnit.Kilometres, "now")]
    [InlineData(-999, OdometerUnit.Kilometres, "now")]
    [InlineData(-300_000, OdometerUnit.Kilometres, "300 km ago")]
    [InlineData(1609.344, OdometerUnit.Miles, "in 1 mi")]
    [InlineData(-1609.344, OdometerUnit.Miles, "1 mi ago")]
    public void A_distance_is_said_in_the_odometers_own_unit(double metres, OdometerUnit unit, string said) =>
        Assert.Equal(said, DueWords.HowFar(Distance.FromMetres((decimal)metres), unit));

    [Theory]
    [InlineData(0, 0, 0, DueState.Ahead)]
    [InlineData(-1, 100, -1, DueState.Overdue)]
    [InlineData(30, -1, -5, DueState.Overdue)]
    [InlineData(30, 100, -5, DueState.OverdueByRate)]
    [InlineData(30, 100, 5, DueState.Ahead)]
    public void Overdue_is_what_the_calendar_or_a_reading_shows(int dueIn, int leftKm, int expectedIn, DueState state) =>
        Assert.Equal(state, DueWords.StateOf(
            Today.PlusDays(dueIn), Distance.FromKilometres(leftKm), Today.PlusDays(expectedIn), Today));

    [Fact]
    public void What_has_no_distance_or_no_day_is_judged_by_the_other()
    {
        Assert.Equal(DueState.Overdue, DueWords.StateOf(Today.PlusDays(-1), null, Today.PlusDays(-1), Today));
        Assert.Equal(DueState.Overdue, DueWords.StateOf(null, Distance.FromKilometres(-1), Today.PlusDays(-1), Today));
        Assert.Equal(DueState.Ahead, DueWords.StateOf(null, Distance.FromKilometres(1), Today, Today));
    }

    [Fact]
    public void An_expected_day_is_said_with_its_span_where_it_has_one()
    {
        Assert.Equal("2026-03-02", Expected(null, null));
        Assert.Equal("2026-03-02", Expected(0, 0));
        Assert.Equal("2026-03-02 (2026-03-01 to 2026-03-05), by its own readings", Expected(-1, 3));
        Assert.Equal("2026-03-02 (2026-03-01 or any time later), by its own readings", Expected(-1, null));
        Assert.Equal("passed 2026-03-02 (2026-03-01 to 2026-03-05)", Expected(-1, 3, leftKm: -1));
    }

    private static string Expected(int? earliestIn, int? latestIn, int leftKm = 1) => DueWords.Expected(
        Today, In(earliestIn), In(latestIn), RateBasis.OwnReadings, Distance.FromKilometres(leftKm));

    private static LocalDate? In(int? days) => days is { } count ? Today.PlusDays(count) : null;

    [Fact]
    public void Every_basis_of_a_rate_has_its_own_words() =>
        Assert.Equal(3, Enum.GetValues<RateBasis>().Select(basis => basis.Spoken()).Distinct().Count());
}
