using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.EngineModels;

public class SpecificationWordsTests
{
    [Theory]
    [InlineData(24_000, null, null, null, "every 24,000 km")]
    [InlineData(null, 24, null, null, "every 24 months")]
    [InlineData(10_000, 12, 1_000, 6, "every 10,000 km or 12 months, first at 1,000 km or 6 months")]
    [InlineData(12_000, 24, 1_000, null, "every 12,000 km or 24 months, first at 1,000 km or 24 months")]
    public void An_interval_is_said_as_the_makers_say_it(int? km, int? months, int? firstKm, int? firstMonths, string said) =>
        Assert.Equal(said, new ServiceInterval
        {
            Every = Of(km), EveryMonths = months, First = Of(firstKm), FirstMonths = firstMonths,
        }.Spoken());

    [Fact]
    public void What_is_particular_of_an_interval_is_said_after_it()
    {
        var interval = new ServiceInterval { Every = Of(12_000), EveryMiles = 7_500, EveryMonths = 12 };

        Assert.Equal("every 12,000 km (7,500 mi) or 12 months", interval.Spoken());
        Assert.Equal(
            "every 12,000 km (7,500 mi) or 12 months, not before 2027-01-01, counted from new; ridden hard at 0.5 of that",
            (interval with
            {
                Counting = CountingRule.OnFixedGrid, AfterDate = new NodaTime.LocalDate(2027, 1, 1), Severe = new SevereUse { Factor = 0.5m },
            }).Spoken());
        Assert.Equal("every 12,000 km (7,500 mi) or 12 months; ridden hard every 6,000 km", (interval with { Severe = new SevereUse { Every = Of(6_000) } }).Spoken());
        Assert.Equal("once at 1,000 km or 2 months", new ServiceInterval { Once = true, First = Of(1_000), FirstMonths = 2 }.Spoken());
        Assert.Equal("once, after 2027-01-01", new ServiceInterval { Once = true, AfterDate = new NodaTime.LocalDate(2027, 1, 1) }.Spoken());
    }

    [Theory]
    [InlineData(2021, 2023, "model years 2021 to 2023, with Chain oiler, without Belt drive")]
    [InlineData(2021, 2021, "model year 2021, with Chain oiler, without Belt drive")]
    [InlineData(2021, null, "from model year 2021, with Chain oiler, without Belt drive")]
    [InlineData(null, 2023, "up to model year 2023, with Chain oiler, without Belt drive")]
    [InlineData(null, null, "with Chain oiler, without Belt drive")]
    public void Which_motorcycles_have_an_item_is_said_by_year_and_option(int? from, int? to, string said)
    {
        var only = new Applicability { FromModelYear = from, ToModelYear = to, WithOptions = ["oiler"], WithoutOptions = ["belt"] };

        Assert.Equal(said, only.Spoken([new("oiler", "Chain oiler"), new("belt", "Belt drive")]));
    }

    [Fact]
    public void What_has_no_interval_is_done_when_needed() => Assert.Equal("when needed", ((ServiceInterval?)null).Spoken());

    [Fact]
    public void Every_kind_and_side_has_words()
    {
        Assert.All(Enum.GetValues<ValveTrainKind>(), kind => Assert.NotEmpty(kind.Spoken()));
        Assert.Equal(["intake", "exhaust"], Enum.GetValues<Side>().Select(s => s.Spoken()));
        Assert.Equal(["clockwise", "anticlockwise"], Enum.GetValues<TurningDirection>().Select(t => t.Spoken()));
    }

    private static Distance? Of(int? kilometres) => kilometres is { } km ? Distance.FromKilometres(km) : null;
}
