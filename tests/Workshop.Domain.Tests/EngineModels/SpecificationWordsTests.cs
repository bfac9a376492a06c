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
