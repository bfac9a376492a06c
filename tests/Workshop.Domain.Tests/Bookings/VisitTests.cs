using CsCheck;
using Workshop.Domain.Bookings;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using NodaTime;
using static Workshop.Domain.JobCards.Likelihood;
using static Workshop.Domain.Tests.Bookings.TestItems;

namespace Workshop.Domain.Tests.Bookings;

public class VisitTests
{
    [Fact]
    public void Each_access_counts_once_however_many_items_need_it()
    {
        var duration = VisitDuration.Of(Specification, Chosen((ValveCheck, Certain), (Plugs, Certain), (Oil, Certain)));

        Assert.Equal(90 + 20 + 30 + 15 + 25, duration.BookedMinutes);
    }

    [Fact]
    public void A_likely_item_is_booked_and_a_possible_one_stands_beside_with_only_what_it_adds()
    {
        var likely = VisitDuration.Of(Specification, Chosen((ValveCheck, Certain), (Adjustment, Likely)));
        var possible = VisitDuration.Of(Specification, Chosen((ValveCheck, Certain), (Adjustment, Possible)));

        Assert.Equal((130, 155, 0, 285), (likely.CertainMinutes, likely.LikelyMinutes, likely.PossibleMinutes, likely.BookedMinutes));
        Assert.Equal((130, 0, 155, 130), (possible.CertainMinutes, possible.LikelyMinutes, possible.PossibleMinutes, possible.BookedMinutes));
    }

    [Fact]
    public void One_item_more_never_shortens_a_visit_and_never_adds_more_than_it_would_take_alone() =>
        Gen.Select(Gen.Bool.Array[Specification.ServiceItems.Count], Gen.Int[0, Specification.ServiceItems.Count - 1]).Sample((picked, added) =>
        {
            var without = Minutes(Specification.ServiceItems.Where((_, i) => picked[i] && i != added));
            var with = Minutes(Specification.ServiceItems.Where((_, i) => picked[i] || i == added));
            var alone = Minutes([Specification.ServiceItems[added]]);
            return with >= without + Specification.ServiceItems[added].LabourMinutes && with <= without + alone;
        });

    [Theory]
    [InlineData(40, "40 min")]
    [InlineData(60, "1 h 0 min")]
    [InlineData(285, "4 h 45 min")]
    public void Minutes_are_said_as_hours_and_minutes(int minutes, string said) => Assert.Equal(said, VisitDuration.Say(minutes));

    [Fact]
    public void The_technician_needs_the_skills_of_possible_items_too_but_their_tools_stay_free()
    {
        var possible = VisitNeeds.Of(Chosen((ValveCheck, Certain), (Adjustment, Possible)));
        var likely = VisitNeeds.Of(Chosen((ValveCheck, Certain), (Adjustment, Likely)));

        Assert.Equal(["cam timing", "valve work"], possible.Skills);
        Assert.Empty(possible.SpecialTools);
        Assert.Equal(["holder", "jig"], likely.SpecialTools);
        Assert.Equal(["cam timing"], likely.SkillsMissing(Resource("TN", ResourceKind.Technician, "valve work", "wheels")));
    }

    [Fact]
    public void A_free_tool_goes_before_a_taken_one_and_one_tool_may_serve_two_needs()
    {
        var needs = VisitNeeds.Of(Chosen((ValveCheck, Certain), (Adjustment, Likely)));
        var first = Resource("jig 1", ResourceKind.SpecialTool, "jig");
        var second = Resource("jig 2", ResourceKind.SpecialTool, "jig");
        var both = Resource("case", ResourceKind.SpecialTool, "holder", "jig");

        var free = needs.ToolsFrom([first, second, Resource("holder", ResourceKind.SpecialTool, "holder")], new HashSet<Guid> { first.Id });
        var shared = needs.ToolsFrom([both], new HashSet<Guid>());
        var none = needs.ToolsFrom([first], new HashSet<Guid>());

        Assert.Equal(second, free["jig"]);
        Assert.Equal((both, both), (shared["jig"], shared["holder"]));
        Assert.Null(none["holder"]);
    }

    [Fact]
    public void A_retired_tool_is_not_taken()
    {
        var retired = Resource("jig", ResourceKind.SpecialTool, "jig", "holder");
        retired.Retired = true;

        Assert.All(VisitNeeds.Of(Chosen((Adjustment, Certain))).ToolsFrom([retired], new HashSet<Guid>()).Values, Assert.Null);
    }

    [Fact]
    public void An_adjustment_needs_its_check_and_every_unknown_code_is_named()
    {
        var alone = VisitItems.Choose(Specification, [new("oil", Certain), new("adjustment", Likely)]).Problem;
        var unknown = VisitItems.Choose(Specification, [new("chain", Certain), new("oil", Certain), new("tyres", Possible)]).Problem;

        Assert.Equal(("adjustment-without-check", "items[1].code"), (alone?.Code, alone?.Faults.Single().Field));
        Assert.Contains("book \"check\" with it", alone?.Sentence, StringComparison.Ordinal);
        Assert.Equal(["items[0].code", "items[2].code"], unknown?.Faults.Select(f => f.Field));
    }

    [Fact]
    public void With_its_check_an_adjustment_is_taken_as_it_was_named()
    {
        var chosen = VisitItems.Choose(Specification, [new("check", Certain), new("adjustment", Possible)]).Value;

        Assert.Equal([(ValveCheck, Certain), (Adjustment, Possible)], chosen.Select(c => (c.Item, c.Likelihood)));
    }

    [Theory]
    [InlineData(57_999, Likely)]
    [InlineData(58_000, Possible)]
    [InlineData(null, Possible)]
    public void An_adjustment_is_likely_when_a_lobe_may_leave_its_limits_before_the_check_after_this(int? leavesKm, Likelihood offered)
    {
        var forecasts = new[] { Forecast(null), Forecast(leavesKm) };

        // The engine has done 34,000 km; the check after this one is 24,000 km on.
        Assert.Equal(offered, AdjustmentOutlook.Of(ValveCheck, forecasts, Distance.FromKilometres(34_000)));
    }

    [Fact]
    public void Without_an_interval_by_distance_an_adjustment_is_possible() =>
        Assert.Equal(Possible, AdjustmentOutlook.Of(Oil, [Forecast(1)], Distance.FromKilometres(34_000)));

    private static int Minutes(IEnumerable<ServiceItem> items) =>
        VisitDuration.Of(Specification, Chosen([.. items.Select(i => (i, Certain))])).BookedMinutes;

    private static Resource Resource(string name, ResourceKind kind, params string[] capabilities) => new()
    {
        Id = NewId.At(Instant.FromUtc(2026, 3, 2, 8, 0)), Kind = kind, Name = name, Capabilities = [.. capabilities],
    };

    private static ClearanceForecast Forecast(int? earliestKm) => new()
    {
        EngineId = default, Valve = new ValveKey(1, Side.Intake, 1), Lobe = 1, ComputedAt = default, Readings = 3,
        LeavesLimitsEarliestAt = earliestKm is { } km ? Distance.FromKilometres(km) : null,
    };
}
