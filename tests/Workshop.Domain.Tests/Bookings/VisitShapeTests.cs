using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using static Workshop.Domain.JobCards.Likelihood;
using static Workshop.Domain.Tests.Bookings.TestItems;

namespace Workshop.Domain.Tests.Bookings;

public class VisitShapeTests
{
    private static readonly WorkshopProfile Usual = new()
    {
        Name = "Test", TimeZone = "Europe/Vienna", ArrivalMinutes = 12, WarmRunMinutes = 15, TestRideMinutes = 20, HandOverMinutes = 10,
    };

    private static readonly ServiceItem Drain = Oil with { DrainsWarm = true };

    private static readonly EngineSpecification Engine = Specification with
    {
        Joints =
        [
            new Joint("cover", "Head cover", [], [], new Sealant("silicone", 4, 45)),
            new Joint("side", "Side cover", [], [], new Sealant("silicone", 2, 90)),
        ],
        Accesses = [.. Specification.Accesses.Select(a => a.Code == "covers" ? a with { Joints = ["cover"] } : a.Code == "radiator" ? a with { Joints = ["side"] } : a)],
        AfterWork = new AfterWork(TestRideMinutes: 30, Recheck: new Recheck(["adjustment"], 2.5m, 25)),
        ServiceItems = [ValveCheck, Adjustment, Plugs, Drain],
    };

    [Fact]
    public void A_valve_check_soaks_cures_runs_warm_and_is_ridden()
    {
        var shape = VisitShape.Of(Engine, Chosen((ValveCheck, Certain)), Usual);

        Assert.Equal(Duration.FromHours(8), shape.Soak);
        Assert.Equal((VisitShape.CounterMinutes, ArrivalTakes.Nobody), (shape.ArrivalMinutes, shape.ArrivalTakes));
        Assert.Equal((130, 45, 15, 30, 0, 10),
            (shape.WorkMinutes, shape.CureMinutes, shape.WarmRunMinutes, shape.TestRideMinutes, shape.RecheckMinutes, shape.HandOverMinutes));
    }

    [Fact]
    public void Without_anything_to_measure_nothing_soaks_and_oil_is_work_like_any_other()
    {
        var shape = VisitShape.Of(Engine, Chosen((Drain, Certain)), Usual);

        Assert.Equal((Duration.Zero, 0, 30), (shape.Soak, shape.ArrivalMinutes, shape.WorkMinutes));
    }

    [Fact]
    public void Oil_is_drained_warm_on_arrival_where_the_engine_soaks_afterwards()
    {
        var shape = VisitShape.Of(Engine, Chosen((ValveCheck, Certain), (Drain, Certain)), Usual, testRunAtArrival: true);

        Assert.Equal((ArrivalTakes.TechnicianAndBay, 30 + 12, 130), (shape.ArrivalTakes, shape.ArrivalMinutes, shape.WorkMinutes));
    }

    [Fact]
    public void A_likely_adjustment_brings_the_longest_cure_of_what_it_opens_and_its_recheck_a_possible_one_does_not()
    {
        var likely = VisitShape.Of(Engine, Chosen((ValveCheck, Certain), (Adjustment, Likely)), Usual);
        var possible = VisitShape.Of(Engine, Chosen((ValveCheck, Certain), (Adjustment, Possible)), Usual);

        Assert.Equal((90, Duration.FromHours(2.5), 25, 285), (likely.CureMinutes, likely.Cool, likely.RecheckMinutes, likely.WorkMinutes));
        Assert.Equal((45, 0, 130), (possible.CureMinutes, possible.RecheckMinutes, possible.WorkMinutes));
    }

    [Fact]
    public void What_a_person_says_of_the_work_goes_before_what_the_items_add_up_to() =>
        Assert.Equal(77, VisitShape.Of(Engine, Chosen((ValveCheck, Certain)), Usual, workMinutes: 77).WorkMinutes);

    [Fact]
    public void A_grade_that_is_too_low_and_a_bay_without_what_it_must_have_are_named_and_a_grade_nobody_entered_is_not_held_against_one()
    {
        var needs = VisitNeeds.Of(Chosen(
            (Plugs with { BayCapabilities = ["lift"] }, Certain), (Adjustment with { Grade = TechnicianGrade.Journeyman, BayCapabilities = ["light"] }, Possible)));
        var bay = new Resource { Id = Guid.Empty, Kind = ResourceKind.Bay, Name = "Bay", Capabilities = ["lift"] };
        Resource Technician(TechnicianGrade? grade) => new()
        {
            Id = Guid.Empty, Kind = ResourceKind.Technician, Name = "T", Capabilities = ["valve work", "cam timing"], Grade = grade,
        };

        Assert.Equal(["light"], needs.BayLacks(bay));
        Assert.Equal(["the grade of journeyman"], needs.TechnicianLacks(Technician(TechnicianGrade.Apprentice)));
        Assert.Empty(needs.TechnicianLacks(Technician(TechnicianGrade.Master)));
        Assert.Empty(needs.TechnicianLacks(Technician(null)));
    }
}
