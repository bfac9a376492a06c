using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Records;
using Xunit;

namespace Workshop.Domain.Tests.Records;

public class RecordWordsTests
{
    private static readonly LocalDate Today = new(2026, 3, 2);
    private static readonly LocalDate NextYear = new(2027, 3, 2);

    [Fact]
    public void What_is_due_next_is_said_by_distance_and_by_day()
    {
        Assert.Equal("At 36,000 km or on 2027-03-02, whichever comes first; by what was ridden so far about 2026-11-20.", Say(new DueAhead(Km(36_000), NextYear, new LocalDate(2026, 11, 20))));
        Assert.Equal("At 36,000 km or on 2027-03-02, whichever comes first.", Say(new DueAhead(Km(36_000), NextYear, NextYear)));
        Assert.Equal("At 36,000 km; the drift of its valves wants it before the interval does.", Say(new DueAhead(Km(36_000), null, ByForecast: true)));
        Assert.Equal("On 2027-03-02; done with Big service.", Say(new DueAhead(null, NextYear, IncludedIn: "Big service")));
        Assert.Equal("When it is needed.", Say(new DueAhead(null, null)));
    }

    [Fact]
    public void What_is_passed_is_still_to_be_done_and_exactly_at_its_point_it_comes_up()
    {
        Assert.Equal("It was due at 23,999 km and is still to be done; the workshop advises to have it done soon.", Say(new DueAhead(Km(23_999), NextYear, Today)));
        Assert.Equal(
            "It was due on 2026-03-01 and is still to be done, with Big service; the workshop advises to have it done soon.",
            Say(new DueAhead(Km(36_000), new LocalDate(2026, 3, 1), IncludedIn: "Big service")));
        Assert.Equal("At 24,000 km.", Say(new DueAhead(Km(24_000), null)));
        Assert.Equal("On 2026-03-02.", Say(new DueAhead(null, Today)));
    }

    [Fact]
    public void A_check_that_left_a_valve_outside_says_so_and_what_is_advised_and_never_that_it_is_overdue()
    {
        var one = new DueAhead(Km(20_000), NextYear, ByForecast: true) { LeftOutside = ["cylinder 1, exhaust 1 (too tight)"] };
        Assert.Equal(
            "Left outside its limits at this visit: cylinder 1, exhaust 1 (too tight). The workshop advises to have that valve set soon; the next check by the interval is due on 2027-03-02. "
            + RecordWords.ForecastCaution, Say(one));
        Assert.Equal(
            "Left outside their limits at this visit: a; b. The workshop advises to have those valves set soon; the next check by the interval is due at 48,000 km. " + RecordWords.ForecastCaution,
            Say(new DueAhead(Km(48_000), null) { LeftOutside = ["a", "b"] }));
        Assert.Equal(
            "By its drift a valve may have left its limits by now. The workshop advises to have the valves checked again soon. " + RecordWords.ForecastCaution,
            Say(new DueAhead(Km(24_000), null, ByForecast: true)));
    }

    [Fact]
    public void Miles_are_said_in_miles() => Assert.Equal(
        "At 15,000 mi.", RecordWords.Due(new DueAhead(Distance.FromMiles(15_000), null), Distance.FromMiles(9_000), Today, OdometerUnit.Miles));

    private static string Say(DueAhead next) => RecordWords.Due(next, Km(24_000), Today, OdometerUnit.Kilometres);

    private static Distance Km(int km) => Distance.FromKilometres(km);
}
