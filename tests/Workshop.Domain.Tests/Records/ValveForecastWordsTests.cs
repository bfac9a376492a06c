using CsCheck;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Records;
using Xunit;

namespace Workshop.Domain.Tests.Records;

public class ValveForecastWordsTests
{
    private static readonly Distance Now = Distance.FromKilometres(24_000);

    [Fact]
    public void A_side_is_said_by_its_first_valve_rounded_outwards_to_the_thousand()
    {
        var said = Say(Valve(Side.Exhaust, 1, 31_900, 48_100), Valve(Side.Exhaust, 2, 33_000, 41_050), Valve(Side.Intake, 1, 60_000, 90_000));

        Assert.Equal(
            ["The intake valves will probably need shims between 60,000 and 90,000 km.", "The exhaust valves will probably need shims between 31,000 and 42,000 km."],
            said.Select(f => f.Sentence));
        Assert.Equal((31_900m, 41_050m, true), (said[1].FromKm!.Value.Kilometres, said[1].ToKm!.Value.Kilometres, said[1].IsForetold));
    }

    [Theory]
    [InlineData(20_000, 30_500, "The exhaust valves may need shims at any time, probably before 31,000 km.")]
    [InlineData(20_000, 24_000, "The exhaust valves probably need shims now.")]
    [InlineData(20_000, null, "The exhaust valves may need shims at any time; it cannot be told until when.")]
    [InlineData(40_900, null, "The exhaust valves will probably not need shims before 40,000 km.")]
    [InlineData(null, null, "The exhaust valves will probably not need shims within 200,000 km of this visit.")]
    public void What_is_near_far_or_open_is_said_so(int? earliest, int? latest, string sentence) =>
        Assert.Equal(sentence, Assert.Single(Say(Valve(Side.Exhaust, 1, earliest, latest))).Sentence);

    [Fact]
    public void Screws_are_set_and_miles_are_miles()
    {
        var said = ValveForecastWords.Say(
            [new ValveOutlookAhead(Key(Side.Intake, 1), Distance.FromMiles(20_500), Distance.FromMiles(26_100), null)], Now, OdometerUnit.Miles, byShim: false);

        Assert.Equal("The intake valves will probably need to be set between 20,000 and 27,000 mi.", said[0].Sentence);
    }

    [Fact]
    public void Without_a_forecast_the_reason_is_said_once_and_beside_one_the_valves_are_named()
    {
        const string NotMeasured = "No forecast: it was not measured yet, and what was done to it before is not known.";

        Assert.Equal(
            "Of the exhaust valves there is no forecast, because it was not measured yet, and what was done to it before is not known.",
            Assert.Single(Say(Unknown(1, NotMeasured), Unknown(2, NotMeasured))).Sentence);
        Assert.Equal(
            "The exhaust valves will probably need shims between 31,000 and 42,000 km. Of cylinder 2, exhaust 1 there is no forecast, because it may have been changed since it was measured; measure it again.",
            Assert.Single(Say(Valve(Side.Exhaust, 1, 31_000, 42_000), Unknown(2, "No forecast: it may have been changed since it was measured; measure it again."))).Sentence);
        Assert.False(Assert.Single(Say(Unknown(1, NotMeasured))).IsForetold);
    }

    /// <summary>Whatever the valves say, no figure of the sentence claims more than they do: the span is never narrower than that of the first valve to leave.</summary>
    [Fact]
    public void The_span_that_is_said_holds_the_first_valve_to_leave() =>
        Gen.Select(Gen.Int[24_001, 150_000], Gen.Int[0, 60_000]).Array[1, 16].Sample(valves =>
        {
            var said = Assert.Single(Say([.. valves.Select((v, i) => Valve(Side.Exhaust, i + 1, v.Item1, v.Item1 + v.Item2))]));
            var figures = said.Sentence.Split(' ').Select(w => w.Replace(",", "", StringComparison.Ordinal)).Where(w => int.TryParse(w, out _)).Select(int.Parse).ToArray();
            Assert.Equal(2, figures.Length);
            Assert.InRange(figures[0], valves.Min(v => v.Item1) - 999, valves.Min(v => v.Item1));
            Assert.InRange(figures[1], valves.Min(v => v.Item1 + v.Item2), valves.Min(v => v.Item1 + v.Item2) + 999);
        });

    [Fact]
    public void A_row_of_an_engine_that_ran_elsewhere_is_told_in_the_motorcycles_distance()
    {
        var row = new ClearanceForecast
        {
            EngineId = Guid.Empty, Valve = new ValveKey(1, Side.Intake, 1), Lobe = 2, ComputedAt = default, Readings = 3,
            LeavesLimitsEarliestAt = Distance.FromKilometres(30_000), LeavesLimitsLatestAt = Distance.FromKilometres(40_000),
        };

        var ahead = ValveOutlookAhead.Of(row, far => far + Distance.FromKilometres(5_000));

        Assert.Equal((new LobeKey(row.Valve, 2), 35_000m, 45_000m), (ahead.Lobe, ahead.Earliest!.Value.Kilometres, ahead.Latest!.Value.Kilometres));
    }

    private static IReadOnlyList<RecordedForecast> Say(params ValveOutlookAhead[] valves) => ValveForecastWords.Say(valves, Now, OdometerUnit.Kilometres, byShim: true);

    private static ValveOutlookAhead Valve(Side side, int cylinder, int? earliest, int? latest) => new(
        Key(side, cylinder), earliest is { } e ? Distance.FromKilometres(e) : null, latest is { } l ? Distance.FromKilometres(l) : null, null);

    private static ValveOutlookAhead Unknown(int cylinder, string why) => new(Key(Side.Exhaust, cylinder), null, null, why);

    private static LobeKey Key(Side side, int cylinder) => new(new ValveKey(cylinder, side, 1));
}
