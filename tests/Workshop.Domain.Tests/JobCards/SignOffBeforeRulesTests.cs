using Workshop.Domain.Arrivals;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Ignition;
using Workshop.Domain.Tests.Arrivals;
using static Workshop.Domain.Tests.Compression.TestedCylinders;
using static Workshop.Domain.Tests.JobCards.VisitFacts;

namespace Workshop.Domain.Tests.JobCards;

public class SignOffBeforeRulesTests
{
    private static readonly SparkPlugs Gap = new(1, "plug", 0.7m, 0.8m, Engine.Provenance);

    [Fact]
    public void An_engine_model_that_asks_for_nothing_holds_no_card_up() =>
        Assert.Empty(SignOffRules.Against(InOrder with { Arrival = [Notes.Of(ArrivalKind.Complaint, ArrivalSubject.Smoke)], Complaint = true }));

    [Fact]
    public void The_state_on_arrival_is_asked_for_until_it_is_recorded_whole()
    {
        var asks = Asks(VisitCheckKind.ArrivalState, WhenAsked.Always);
        var reason = Assert.Single(SignOffRules.Against(asks with { Arrival = [.. Notes.Whole.Skip(1)] }));

        Assert.Equal(("arrival", SignOffPlace.CheckIn), (reason.Subject, reason.Place));
        Assert.Equal("State on arrival, asked for on every visit: not recorded yet: leaks, or that none was seen.", reason.Sentence);
        Assert.Empty(SignOffRules.Against(asks with { Arrival = Notes.Whole }));
        Assert.Equal("state on arrival to record", BaySteps.Of(asks, true, []).Single(s => s.Step == BayStep.Open).Left);
    }

    [Fact]
    public void Compression_holds_the_card_up_only_once_a_valve_is_tight_or_the_owner_complains()
    {
        var asks = Asks(VisitCheckKind.Compression, WhenAsked.TightOrComplaint);
        Assert.Empty(SignOffRules.Against(asks));

        var complains = asks with { Complaint = true };
        Assert.Equal("Cylinder 1: compression or leak-down is asked for (the owner complains of how it runs), but it was not measured.",
            Assert.Single(SignOffRules.Against(complains)).Sentence);
        Assert.Empty(SignOffRules.Against(complains with { CylinderTests = [Dry(1, 1100)] }));
        Assert.Empty(SignOffRules.Against(complains with { CylinderTests = [Leak(1, 10)] }));
        // With oil alone nothing is known of the cylinder as it was.
        Assert.Single(SignOffRules.Against(complains with { CylinderTests = [Wet(1, 1100)] }));
    }

    [Fact]
    public void Where_nothing_is_a_gate_a_tight_valve_still_brings_the_step_up()
    {
        var tight = InOrder with { Readings = [Reading(Intake, Stage.AsFound, 0.05m), InOrder.Readings[1]] };

        Assert.DoesNotContain(BaySteps.Of(InOrder, true, []), s => s.Step == BayStep.Cylinders);
        Assert.True(BaySteps.Of(tight, true, []).Single(s => s.Step == BayStep.Cylinders).Done);
        var asked = Asks(VisitCheckKind.Compression, WhenAsked.TightOrComplaint) with { Readings = tight.Readings };
        Assert.Equal("1 cylinder to test", BaySteps.Of(asked, true, []).Single(s => s.Step == BayStep.Cylinders).Left);
    }

    [Fact]
    public void Plugs_are_looked_at_and_go_back_with_a_gap_that_is_allowed()
    {
        var asks = Asks(VisitCheckKind.Plugs, WhenAsked.Always);
        asks = asks with { Specification = asks.Specification with { SparkPlugs = Gap } };

        Assert.Equal("Plug of cylinder 1: the spark plugs are asked for (on every visit), but nobody has written down what was seen of it.",
            Assert.Single(SignOffRules.Against(asks)).Sentence);
        Assert.Equal("Plug of cylinder 1: goes back with a gap that is too wide: 0.7 to 0.8 mm is allowed; set it or renew it.",
            Assert.Single(SignOffRules.Against(asks with { PlugChecks = [Plug(0.85m)] })).Sentence);
        Assert.Empty(SignOffRules.Against(asks with { PlugChecks = [Plug(0.85m), Plug(0.80m, attempt: 2)] }));
    }

    [Fact]
    public void Each_of_two_plugs_of_a_cylinder_is_asked_for()
    {
        var asks = Asks(VisitCheckKind.Plugs, WhenAsked.Always);
        asks = asks with { Specification = asks.Specification with { SparkPlugs = Gap with { PerCylinder = 2 } }, PlugChecks = [Plug(0.75m)] };

        Assert.StartsWith("Plug 2 of cylinder 1:", Assert.Single(SignOffRules.Against(asks)).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(PlugCondition.CrackedInsulator, false, true)]
    [InlineData(PlugCondition.WornElectrode, false, true)]
    [InlineData(PlugCondition.CrackedInsulator, true, false)]
    [InlineData(PlugCondition.Sooty, false, false)]
    public void A_plug_that_is_cracked_or_burnt_away_does_not_go_back(PlugCondition condition, bool renewed, bool refused) =>
        Assert.Equal(refused, PlugRules.FaultOfRefitting("plugs[0].renewed", condition, renewed) is not null);

    [Theory]
    [InlineData(JobCardState.SignedOff, true, null)]
    [InlineData(JobCardState.SignedOff, false, "comebackOf is 1001: that job card is of another motorcycle; a comeback is of the same one.")]
    [InlineData(JobCardState.CheckedIn, true, "Job card 1001 is not signed off yet: what is wrong is put right on it, not on a new card.")]
    [InlineData(JobCardState.Cancelled, true, "Job card 1001 is cancelled: nothing was done that could come back.")]
    public void A_comeback_is_of_a_signed_card_of_the_same_motorcycle(JobCardState state, bool same, string? sentence)
    {
        var motorcycle = NewId.At(Start);
        var card = new JobCard
        {
            Number = 1001, MotorcycleId = motorcycle, EngineId = Guid.Empty, EngineModelVersionId = Guid.Empty, BookedBy = Guid.Empty, BookedAt = Start,
            StartsAt = Start, EndsAt = Start, State = state,
        };

        Assert.Equal(sentence, ComebackRules.Refuse(card, 1001, same ? motorcycle : Guid.Empty)?.Sentence);
    }

    private static SignOffFacts Asks(VisitCheckKind kind, WhenAsked when) =>
        InOrder with { Specification = Engine with { Compression = Limits, VisitChecks = [new CheckOnVisit(kind, when)] } };

    private static PlugCheck Plug(decimal leftMm, int attempt = 1) => new()
    {
        Id = NewId.At(Start), EngineId = Guid.Empty, JobCardNumber = 1001, Cylinder = 1, Plug = 1, Attempt = attempt, Condition = PlugCondition.Normal,
        Renewed = false, GapLeftMm = leftMm, Gauge = GapGauge.Wire, OdometerReadingId = Guid.Empty, CheckedAt = Start, CheckedBy = Guid.Empty,
        EnteredBy = Guid.Empty, EnteredAt = Start,
    };
}
