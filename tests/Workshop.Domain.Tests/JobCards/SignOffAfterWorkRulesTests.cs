using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using static Workshop.Domain.Tests.JobCards.VisitFacts;
using Stage = Workshop.Domain.Clearances.Stage;

namespace Workshop.Domain.Tests.JobCards;

/// <summary>The gates of what follows the work, each on a visit at which all else is in order.</summary>
public class SignOffAfterWorkRulesTests
{
    private static readonly Instant Later = Start + Duration.FromHours(2);

    [Fact]
    public void Without_a_word_of_the_engine_model_nothing_holds() => Assert.Empty(SignOffRules.Against(InOrder));

    [Theory]
    [InlineData(VisitCheckKind.Balance, "afterWork.balance")]
    [InlineData(VisitCheckKind.LeakCheck, "afterWork.leaks.engine")]
    [InlineData(VisitCheckKind.TestRide, "afterWork.testRide")]
    [InlineData(VisitCheckKind.ReminderReset, "afterWork.reminder")]
    [InlineData(VisitCheckKind.PartsCounted, "afterWork.counts")]
    public void What_is_asked_for_and_not_done_holds(VisitCheckKind kind, string subject)
    {
        var reason = Assert.Single(SignOffRules.Against(InOrder.Asking(new CheckOnVisit(kind, WhenAsked.Always))));

        Assert.Equal((subject, SignOffPlace.AfterWork), (reason.Subject, reason.Place));
    }

    [Fact]
    public void A_balance_from_before_the_valves_were_changed_is_none()
    {
        var asked = Adjusted.Asking(new CheckOnVisit(VisitCheckKind.Balance, WhenAsked.Always));

        Assert.Contains("before valves were changed", Assert.Single(With(asked, new() { Balances = [Balanced(Start - Duration.FromHours(1), 28, 28)] })).Sentence, StringComparison.Ordinal);
        Assert.Empty(With(asked, new() { Balances = [Balanced(Later, 28, 28)] }));
    }

    [Fact]
    public void A_balance_that_is_left_outside_is_accepted_with_a_remark_only_and_one_that_was_right_as_found_will_do()
    {
        var asked = InOrder.Asking(new CheckOnVisit(VisitCheckKind.Balance, WhenAsked.Always) { Balance = new BalanceFigures(1300, 50, Pressure.FromKilopascals(2)) });
        FinishedWork outside = new() { Balances = [Balanced(Later, 26, 29)] };

        Assert.Contains("left outside: 3 kPa", Assert.Single(With(asked, outside)).Sentence, StringComparison.Ordinal);
        Assert.Empty(With(asked with { OutsideAccepted = true }, outside));
        Assert.Empty(With(asked, new() { Balances = [Balanced(Later, 28, 29, Stage.AsFound)] }));
        Assert.Single(With(asked, new() { Balances = [Balanced(Later, 28, 29, Stage.AsFound), Balanced(Later, 26, 29)] }));
    }

    [Fact]
    public void A_leak_holds_asked_for_or_not_and_weeping_does_not()
    {
        Assert.Single(With(InOrder, new() { Leaks = [Looked(LeakState.Leaking, 1)] }));
        Assert.Empty(With(InOrder, new() { Leaks = [Looked(LeakState.Weeping, 1)] }));
        Assert.Empty(With(InOrder, new() { Leaks = [Looked(LeakState.Leaking, 1), Looked(LeakState.Dry, 2)] }));
        Assert.Single(With(InOrder, new() { Leaks = [Looked(LeakState.Dry, 1), Looked(LeakState.Leaking, 2)] }));
    }

    [Fact]
    public void What_a_bay_step_says_is_left_is_what_the_gates_ask()
    {
        var asked = InOrder.Asking(new CheckOnVisit(VisitCheckKind.LeakCheck, WhenAsked.Always), new CheckOnVisit(VisitCheckKind.TestRide, WhenAsked.Always), new CheckOnVisit(VisitCheckKind.PartsCounted, WhenAsked.Always));

        var steps = BaySteps.Of(asked, workBegun: true, []);
        Assert.Equal("nothing is counted in", steps[0].Left);
        Assert.Equal("leak check, test ride, count back to do", steps[^1].Left);
        Assert.Equal("not signed off", BaySteps.Of(InOrder, workBegun: true, [])[^1].Left);
        Assert.Equal("", BaySteps.Of(asked with { State = JobCardState.SignedOff }, workBegun: true, [])[^1].Left);
    }

    [Fact]
    public void The_cooled_engine_is_asked_for_by_what_follows_the_work_and_waived_by_a_hand_over_with_a_reason()
    {
        var asked = InOrder with { Specification = InOrder.Specification with { AfterWork = new AfterWork(Recheck: new Recheck([Oil.Code], 3, 15)) } };

        Assert.Equal("afterWork.rechecks.cooled", Assert.Single(SignOffRules.Against(asked)).Subject);
        Assert.Empty(With(asked, new() { HandedOverUncooled = true }));
        Assert.Empty(With(asked, new() { Rechecks = [Rechecked(inOrder: true)] }));
        Assert.Single(With(asked, new() { Rechecks = [Rechecked(inOrder: false)], HandedOverUncooled = true }));
        Assert.Empty(SignOffRules.Against(asked with { UnderWay = [new(Check)], Ticks = [Tick("cover-bolt")] }));
    }

    private static IReadOnlyList<SignOffReason> With(SignOffFacts facts, FinishedWork work) => SignOffRules.Against(facts with { Finished = work });

    private static BalanceRun Balanced(Instant at, decimal first, decimal second, Stage stage = Stage.AsLeft) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, Stage = stage, Attempt = 1, SpeedRpm = 1300, HotAt = Temperature.FromCelsius(85), HotOf = HotPart.Coolant,
        GaugeId = Guid.Empty, MeasuredAt = at, MeasuredBy = Guid.Empty, EnteredAt = at,
        Vacuums = [Vacuum(1, first), Vacuum(2, second)],
    };

    private static BalanceVacuum Vacuum(int cylinder, decimal kilopascals) =>
        new() { RunId = Guid.Empty, Cylinder = cylinder, Vacuum = Pressure.FromKilopascals(kilopascals) };

    private static LeakLook Looked(LeakState state, int attempt) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, PlaceCode = LeakPlaces.Whole, PlaceName = "Engine", Attempt = attempt, State = state, RunMinutes = 10,
        LookedAt = Later, LookedBy = Guid.Empty, EnteredAt = Later,
    };

    private static VisitRecheck Rechecked(bool inOrder) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, Point = RecheckPoint.Cooled, Attempt = 1, InOrder = inOrder, RecheckedAt = Later, RecheckedBy = Guid.Empty, EnteredAt = Later,
    };
}

internal static class AskingFacts
{
    /// <summary>The same visit of an engine model that asks for these.</summary>
    public static SignOffFacts Asking(this SignOffFacts facts, params CheckOnVisit[] checks) =>
        facts with { Specification = facts.Specification with { VisitChecks = checks } };
}
