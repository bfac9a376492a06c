using CsCheck;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;

namespace Workshop.Domain.Tests.Intervals;

public class IntervalRulesTests
{
    private static readonly ServiceItem Item = new("item", "Item", ServiceItemKind.Routine, 10, new Provenance("Invented for tests", "1"));

    private static readonly ServiceInterval Table = new()
    {
        Every = Distance.FromKilometres(12_000), EveryMiles = 7_500, EveryMonths = 12, First = Distance.FromKilometres(1_000), FirstMonths = 3,
    };

    [Theory]
    [InlineData(2020, false)]
    [InlineData(2021, true)]
    [InlineData(2023, true)]
    [InlineData(2024, false)]
    public void Model_years_are_from_and_to_both_included(int year, bool applies) => Assert.Equal(
        applies, (Item with { OnlyFor = new Applicability { FromModelYear = 2021, ToModelYear = 2023 } }).AppliesTo(Of() with { ModelYear = year }));

    [Fact]
    public void All_options_that_it_wants_must_be_fitted_and_none_that_it_does_not()
    {
        var item = Item with { OnlyFor = new Applicability { WithOptions = ["oiler", "heated-grips"], WithoutOptions = ["belt"] } };

        Assert.True(item.AppliesTo(Of("heated-grips", "oiler", "other")));
        Assert.False(item.AppliesTo(Of("oiler")));
        Assert.False(item.AppliesTo(Of("oiler", "heated-grips", "belt")));
        Assert.True(Item.AppliesTo(Of()));
    }

    /// <summary>7500 mi are 12,070.08 km, not 12,000: the maker's figure counts, exactly (NIST SP 811, appendix B.8).</summary>
    [Fact]
    public void Miles_that_the_maker_states_count_for_an_odometer_in_miles_and_for_no_other()
    {
        Assert.Equal(12_070_080m, Table.For(Of() with { Unit = OdometerUnit.Miles }).Every!.Value.Metres);
        Assert.Equal(12_000_000m, Table.For(Of()).Every!.Value.Metres);
    }

    [Fact]
    public void Kilometres_without_miles_of_their_own_stay_exact_on_an_odometer_in_miles()
    {
        var first = Table.For(Of() with { Unit = OdometerUnit.Miles }).First!.Value;

        Assert.Equal(1_000_000m, first.Metres);
        Assert.Equal(621, OdometerUnit.Miles.CountOf(first));
        Assert.True(OdometerUnit.Miles.ToDistance(621) < first && first < OdometerUnit.Miles.ToDistance(622));
    }

    [Fact]
    public void Severe_use_shortens_by_a_factor_and_months_are_rounded_down_to_one_at_least()
    {
        var severe = (Table with { Severe = new SevereUse { Factor = 0.3m } }).For(Of() with { Use = RidingUse.Severe });

        Assert.Equal(
            (3_600m, 3, 300m, 1), (severe.Every!.Value.Kilometres, severe.EveryMonths, severe.First!.Value.Kilometres, severe.FirstMonths));
    }

    [Fact]
    public void Severe_use_may_have_figures_of_its_own_and_what_it_leaves_out_stays()
    {
        var severe = (Table with { Severe = new SevereUse { Every = Distance.FromKilometres(6_000) } }).For(Of() with { Use = RidingUse.Severe });

        Assert.Equal((6_000m, 12, 1_000m), (severe.Every!.Value.Kilometres, severe.EveryMonths, severe.First!.Value.Kilometres));
    }

    [Fact]
    public void Ridden_as_usual_nothing_is_shortened() =>
        Assert.Equal(Table.Every, (Table with { Severe = new SevereUse { Factor = 0.5m } }).For(Of()).Every);

    [Fact]
    public void Severe_is_never_longer_and_never_below_a_month() =>
        Gen.Select(Gen.Int[1, 300_000], Gen.Int[1, 240], Gen.Int[1, 99], Gen.Enum<OdometerUnit>()).Sample((km, months, hundredths, unit) =>
        {
            var interval = new ServiceInterval
            {
                Every = Distance.FromKilometres(km), EveryMonths = months, Severe = new SevereUse { Factor = hundredths / 100m },
            };
            var severe = interval.For(Of() with { Use = RidingUse.Severe, Unit = unit });

            Assert.InRange(severe.EveryMonths!.Value, 1, months);
            Assert.Equal(km * 10m * hundredths, severe.Every!.Value.Metres);
        }, iter: 1_000);

    private static MotorcycleFacts Of(params string[] options) => new(2022, OdometerUnit.Kilometres, RidingUse.Normal, options);
}
