using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;
using static Workshop.Domain.Tests.JobCards.VisitFacts;

namespace Workshop.Domain.Tests.JobCards;

public class SignOffRulesTests
{
    [Fact]
    public void Nothing_stands_in_the_way_of_a_visit_in_order()
    {
        Assert.Empty(SignOffRules.Against(InOrder));
        Assert.Empty(SignOffRules.Against(Adjusted));
        Assert.Null(SignOffRules.Refuse(Adjusted));
    }

    [Theory]
    [InlineData(JobCardState.Booked, "Job card 1001 is booked, but the motorcycle is not checked in.")]
    [InlineData(JobCardState.SignedOff, "Job card 1001 is signed off already; a card is signed once.")]
    [InlineData(JobCardState.Cancelled, "Job card 1001 is cancelled.")]
    public void A_card_that_is_not_open_is_refused_for_that_alone(JobCardState state, string sentence) =>
        Assert.Equal([sentence], Sentences(InOrder with { State = state, Ticks = [] }));

    [Fact]
    public void A_seal_that_is_reused_after_inspection_asks_for_one_when_it_was_opened()
    {
        var plug = Engine.Fasteners[2] with { Seals = [new Seal("ring", 1, SealPolicy.InspectAndReuse), new Seal("o-ring", 1, SealPolicy.ReplaceIfDamaged)] };
        var opened = InOrder with { Specification = Engine with { Fasteners = [.. Engine.Fasteners.Take(2), plug] } };
        var fit = new SealInspection
        {
            Id = Guid.CreateVersion7(), JobCardNumber = 1001, PlaceCode = "plug", PartCode = "ring", Verdict = SealVerdict.Fit, Taken = 0,
            InspectedBy = Guid.Empty, InspectedAt = Start,
        };

        Assert.Equal(["Oil drain plug: ring is reused only after an inspection, and nobody has recorded one."], Sentences(opened));
        Assert.Equal("seals.plug.ring", Assert.Single(SignOffRules.Against(opened)).Subject);
        Assert.Empty(Sentences(opened with { SealInspections = [fit] }));
        Assert.Empty(Sentences(opened with { NotDone = new HashSet<string> { "oil" }, Ticks = InOrder.Ticks }));
        // What is fitted once is replaced, not looked at.
        var once = new Part { Id = Guid.Empty, Code = "ring", Name = "Ring", Kind = PartKind.SealingRing, Unit = PartUnit.Piece, FittedOnce = true };
        Assert.Empty(Sentences(opened with { Parts = new Dictionary<string, Part> { ["ring"] = once } }));
    }

    [Fact]
    public void A_check_lacks_lobes_as_found() => Assert.Equal(
        ["Cylinder 1, exhaust 1: \"Valve clearance check\" is booked, but it was not measured as found."],
        Sentences(InOrder with { Readings = [Reading(Intake, Stage.AsFound, 0.15m)] }));

    [Fact]
    public void Each_lobe_of_a_switched_valve_is_asked_for()
    {
        var twoLobes = Engine with
        {
            Valves = [new Valve(Intake, Lobes: 2), new Valve(Exhaust)],
            Limits = [.. Engine.Limits, Engine.Limits[0] with { Lobe = 2 }],
        };

        var reason = Assert.Single(SignOffRules.Against(InOrder with { Specification = twoLobes }));

        Assert.Equal("valves.1-intake-1.lobe2", reason.Subject);
        Assert.StartsWith("Cylinder 1, intake 1, lobe 2: ", reason.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_check_that_was_not_done_asks_for_no_readings() => Assert.Empty(
        SignOffRules.Against(InOrder with { NotDone = new HashSet<string> { "check" }, Readings = [] }));

    [Fact]
    public void A_fitted_shim_asks_for_a_reading_as_left()
    {
        var facts = Adjusted with { Readings = InOrder.Readings };

        Assert.Equal(["Cylinder 1, intake 1: disturbed, since a shim was fitted, but not measured as left."], Sentences(facts));
    }

    [Fact]
    public void A_shim_that_came_out_and_went_back_asks_for_it_too() => Assert.Equal(
        ["Cylinder 1, intake 1: disturbed, since its shim came out, but not measured as left."],
        Sentences(InOrder with { Shims = [Shim(Intake, Stage.AsFound)] }));

    [Fact]
    public void A_turned_screw_asks_for_a_reading_as_left() => Assert.Equal(
        ["Cylinder 1, exhaust 1: disturbed, since its screw was turned, but not measured as left."],
        Sentences(InOrder with { Events = [Event(Exhaust, ValveEventKind.ScrewTurned)] }));

    [Fact]
    public void A_changed_part_asks_for_a_reading_as_left()
    {
        Assert.Equal(
            ["Cylinder 1, exhaust 1: disturbed, since its valve seat was changed, but not measured as left."],
            Sentences(InOrder with { Changes = [Change(Exhaust, ValvePart.Seat)] }));
        Assert.Equal(2, Sentences(InOrder with { Changes = [Change(null, ValvePart.CylinderHead)] }).Count);
    }

    [Theory]
    [InlineData(ValveTrainKind.ShimUnderBucket, true)]
    [InlineData(ValveTrainKind.ShimUnderFingerFollower, true)]
    [InlineData(ValveTrainKind.ShimOverBucket, false)]
    [InlineData(ValveTrainKind.ScrewAndLocknut, false)]
    public void A_shaft_that_came_out_disturbs_all_its_valves_where_the_shim_lies_under_it(ValveTrainKind train, bool disturbs)
    {
        var facts = Adjusted with { Specification = WithTrain(train, oneShaft: true) };

        Assert.Equal(
            disturbs ? ["Cylinder 1, exhaust 1: disturbed, since the camshaft came out, but not measured as left."] : [],
            Sentences(facts));
    }

    [Fact]
    public void A_valve_that_was_not_disturbed_keeps_what_was_found()
    {
        var facts = Adjusted with
        {
            Specification = WithTrain(ValveTrainKind.ShimUnderFingerFollower, oneShaft: true),
            Events = [Event(Exhaust, ValveEventKind.NotDisturbed)],
            Readings = [.. Adjusted.Readings, Reading(Exhaust, Stage.AsLeft, 0.25m, carried: true)],
        };

        Assert.Empty(SignOffRules.Against(facts));
    }

    [Fact]
    public void A_reading_only_carried_over_is_none_for_a_disturbed_valve()
    {
        var facts = Adjusted with { Readings = [.. InOrder.Readings, Reading(Intake, Stage.AsLeft, 0.15m, carried: true)] };

        Assert.Equal(["Cylinder 1, intake 1: disturbed, since a shim was fitted, but not measured as left."], Sentences(facts));
    }

    [Fact]
    public void A_reading_as_left_from_before_the_last_shim_is_none()
    {
        var facts = Adjusted with { Shims = [Adjusted.Shims[0], Shim(Intake, Stage.AsLeft, minute: 30)] };

        Assert.Equal(["Cylinder 1, intake 1: changed again after it was measured as left; measure it once more."], Sentences(facts));
    }

    [Fact]
    public void A_reading_as_left_outside_the_limits_stands_in_the_way_unless_accepted()
    {
        var facts = Adjusted with { Readings = [.. InOrder.Readings, Reading(Intake, Stage.AsLeft, 0.23m)] };

        Assert.Equal(
            ["Cylinder 1, intake 1: as left too wide: above 0.20 mm; 0.10 to 0.20 mm is allowed; adjust it, or accept it with a remark."],
            Sentences(facts));
        Assert.Empty(SignOffRules.Against(facts with { OutsideAccepted = true }));
    }

    [Fact]
    public void The_last_attempt_as_left_counts()
    {
        var facts = Adjusted with
        {
            Readings = [.. InOrder.Readings, Reading(Intake, Stage.AsLeft, 0.23m), Reading(Intake, Stage.AsLeft, 0.15m, attempt: 2)],
        };

        Assert.Empty(SignOffRules.Against(facts));
    }

    [Fact]
    public void A_valve_found_too_tight_and_left_alone_stands_in_the_way()
    {
        var facts = InOrder with { Readings = [Reading(Intake, Stage.AsFound, 0.07m), Reading(Exhaust, Stage.AsFound, 0.25m)] };

        Assert.Equal(
            ["Cylinder 1, intake 1: found and left too tight: below 0.10 mm; 0.10 to 0.20 mm is allowed; adjust it, or accept it with a remark."],
            Sentences(facts));
        Assert.Empty(SignOffRules.Against(facts with { OutsideAccepted = true }));
    }

    [Fact]
    public void A_bracket_that_decides_nothing_is_no_reason() => Assert.Empty(SignOffRules.Against(
        InOrder with { Readings = [Reading(Intake, Stage.AsFound, 0.08m, 0.12m), Reading(Exhaust, Stage.AsFound, 0.25m)] }));

    [Fact]
    public void What_was_found_outside_no_longer_matters_once_the_valve_is_disturbed()
    {
        var facts = Adjusted with
        {
            Readings =
            [
                Reading(Intake, Stage.AsFound, 0.05m), Reading(Exhaust, Stage.AsFound, 0.25m), Reading(Intake, Stage.AsLeft, 0.15m),
            ],
        };

        Assert.Empty(SignOffRules.Against(facts));
    }

    [Fact]
    public void An_opened_fastener_lacks_its_tick() => Assert.Equal(
        ["Head cover bolt (6): opened, but not ticked on the torque sheet."], Sentences(InOrder with { Ticks = [Tick("plug")] }));

    [Fact]
    public void A_tick_taken_back_is_none()
    {
        var first = Tick("plug");

        Assert.Equal(
            ["Oil drain plug: its tick was taken back."],
            Sentences(InOrder with { Ticks = [Tick("cover-bolt"), first, Tick("plug", tightened: false, first)] }));
    }

    [Fact]
    public void A_tick_from_before_the_adjustment_was_begun_is_none()
    {
        var facts = Adjusted with { Ticks = [Tick("cover-bolt", minute: -5), Tick("plug", minute: -5), Tick("cap-bolt")] };

        Assert.Equal(["Head cover bolt (6): opened again since it was ticked."], Sentences(facts));
    }

    [Fact]
    public void An_item_not_done_opens_nothing_unless_the_card_shows_that_somebody_was_at_it()
    {
        var untouched = InOrder with { NotDone = new HashSet<string> { "oil" }, Ticks = [Tick("cover-bolt")] };
        var ticked = untouched with { Ticks = [Tick("cover-bolt"), Tick("plug", tightened: false)] };
        var measured = InOrder with { NotDone = new HashSet<string> { "check" }, Ticks = [Tick("plug")] };
        var begun = Adjusted with { NotDone = new HashSet<string> { "adjust" }, Ticks = InOrder.Ticks };

        Assert.Empty(Sentences(untouched));
        Assert.Equal(["Oil drain plug: its tick was taken back."], Sentences(ticked));
        Assert.Equal(["Head cover bolt (6): opened, but not ticked on the torque sheet."], Sentences(measured));
        Assert.Equal(["Cap bolt (8): opened, but not ticked on the torque sheet."], Sentences(begun));
        Assert.Equal(["check", "oil"], begun.Done.Select(i => i.Code));
    }

    [Fact]
    public void A_caution_that_nobody_read_stands_in_the_way()
    {
        var reason = Assert.Single(SignOffRules.Against(InOrder with { Acknowledged = new HashSet<string> { "hot-oil" } }));

        Assert.Equal(("cautions.turn-by-hand", "The caution \"Two full turns by hand\" is not acknowledged.", SignOffPlace.Cautions),
            (reason.Subject, reason.Sentence, reason.Place));
    }

    [Fact]
    public void A_refusal_lists_every_reason_with_what_it_is_about()
    {
        var problem = SignOffRules.Refuse(InOrder with { Ticks = [], Acknowledged = new HashSet<string>(), Readings = [] });

        Assert.Equal(ProblemKind.Conflict, problem!.Kind);
        Assert.Equal(
            ["valves.1-intake-1", "valves.1-exhaust-1", "fasteners.plug", "fasteners.cover-bolt", "cautions.hot-oil", "cautions.turn-by-hand"],
            problem.Faults.Select(f => f.Field));
    }

    [Fact]
    public void Every_rule_there_is_is_asked() => Assert.Equal(
        typeof(ISignOffRule).Assembly.GetTypes().Where(t => t.IsClass && t.IsAssignableTo(typeof(ISignOffRule))).Select(t => t.Name).Order(),
        SignOffRules.All.Select(r => r.GetType().Name).Order());

    private static List<string> Sentences(SignOffFacts facts) => [.. SignOffRules.Against(facts).Select(r => r.Sentence)];

    /// <summary>Intake 0.10 to 0.20 at ratio 1: 0.05 with 1.21 in would need 1.16 mm or less, and 1.20 is the least permitted.</summary>
    [Fact]
    public void A_valve_beyond_any_permitted_shim_holds_the_sign_off_whatever_is_accepted()
    {
        var facts = InOrder with
        {
            Specification = Engine with { Shims = ThickEnough }, OutsideAccepted = true,
            Readings = [Reading(Intake, Stage.AsFound, 0.05m), InOrder.Readings[1]],
            ShimsBefore = new Dictionary<ValveKey, Domain.Measures.ShimThickness> { [Intake] = Domain.Measures.ShimThickness.FromMillimetres(1.21m) },
        };

        var reason = Assert.Single(SignOffRules.Against(facts));

        Assert.Equal(("valves.1-intake-1", SignOffPlace.Shims), (reason.Subject, reason.Place));
        Assert.Contains(Domain.Shims.ShimPlanner.DoNotGrind, reason.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain(
            SignOffRules.Against(facts with { Changes = [Change(Intake, ValvePart.Seat)] }), r => r.Place == SignOffPlace.Shims);
        Assert.Empty(SignOffRules.Against(facts with { NotDone = new HashSet<string> { "check" } }));
    }

    private static Domain.EngineModels.ShimRange ThickEnough => new(
        "shim", 9, "disc", Domain.Measures.ShimThickness.FromMillimetres(1.2m), Domain.Measures.ShimThickness.FromMillimetres(3.2m), 0.05m,
        new Provenance("Invented for tests", "1"));
}
