using NodaTime;
using Workshop.Domain.JobCards;
using static Workshop.Domain.Tests.JobCards.VisitFacts;

namespace Workshop.Domain.Tests.JobCards;

public class BayStepsTests
{
    [Fact]
    public void Where_one_is_is_the_first_step_that_a_gate_still_asks_something_of()
    {
        Assert.Equal(BayStep.Open, Now(InOrder with { Readings = [] }, begun: false));
        Assert.Equal(BayStep.Measure, Now(InOrder with { Readings = [InOrder.Readings[0]] }));
        Assert.Equal(BayStep.Tighten, Now(InOrder with { Ticks = [] }));
        Assert.Equal(BayStep.Close, Now(InOrder));
    }

    [Fact]
    public void What_is_left_of_a_step_is_said_in_a_few_words()
    {
        var steps = BaySteps.Of(InOrder with { Readings = [InOrder.Readings[0]], Ticks = [] }, workBegun: true, []);

        Assert.Equal("1 lobe to measure", Left(steps, BayStep.Measure));
        Assert.Equal("after measuring", Left(steps, BayStep.Adjust));
        Assert.Equal("2 fasteners to tighten", Left(steps, BayStep.Tighten));
        Assert.Equal("not signed off", Left(steps, BayStep.Close));
    }

    [Fact]
    public void Measuring_again_is_a_step_only_where_something_was_disturbed()
    {
        Assert.DoesNotContain(BaySteps.Of(InOrder, true, []), s => s.Step == BayStep.MeasureAgain);
        Assert.Contains(BaySteps.Of(Adjusted, true, []), s => s.Step == BayStep.MeasureAgain);
        Assert.Equal("not open yet", Left(BaySteps.Of(Adjusted, true, ["Tick the caps."]), BayStep.MeasureAgain));
    }

    [Fact]
    public void What_an_adjustment_opened_is_tight_before_measuring_as_left_and_the_covers_after_it()
    {
        var steps = BaySteps.Of(Adjusted with { Ticks = [], Readings = InOrder.Readings }, true, ["Tick the caps."]);

        Assert.Equal(
            [BayStep.Open, BayStep.Measure, BayStep.Adjust, BayStep.Refit, BayStep.MeasureAgain, BayStep.Tighten, BayStep.Close], steps.Select(s => s.Step));
        Assert.Equal(("1 fastener to tighten", "after measuring as left"), (Left(steps, BayStep.Refit), Left(steps, BayStep.Tighten)));
        Assert.Equal(["cap-bolt"], steps.Single(s => s.Step == BayStep.Refit).Fasteners);
        Assert.Equal(["cover-bolt", "plug"], steps.Single(s => s.Step == BayStep.Tighten).Fasteners.Order());
        Assert.Equal(BayStep.Tighten, Now(Adjusted with { Ticks = [Tick("cap-bolt")] }));
    }

    [Fact]
    public void A_caution_that_nobody_read_holds_the_step_at_whose_moment_it_is_shown()
    {
        var steps = BaySteps.Of(InOrder with { Acknowledged = new HashSet<string>() }, workBegun: true, []);

        Assert.Equal("1 caution to read", Left(steps, BayStep.Open));
        Assert.Equal("", Left(steps, BayStep.Tighten));
    }

    [Fact]
    public void A_visit_without_a_check_has_no_steps_of_measuring() =>
        Assert.Equal(
            [BayStep.Open, BayStep.Tighten, BayStep.Close],
            BaySteps.Of(InOrder with { UnderWay = [new(Oil)], Readings = [] }, true, []).Select(s => s.Step));

    [Fact]
    public void Worked_time_is_that_of_all_clocks_together_and_a_clock_that_runs_counts_until_now()
    {
        var worked = WorkClock.Worked(
            [Spell(0, 60), Spell(30, 90), Spell(100, null)], Start + Duration.FromMinutes(110));

        Assert.Equal(Duration.FromMinutes(130), worked);
        Assert.Equal(Duration.Zero, WorkClock.Worked([], Start));
    }

    private static BayStep? Now(SignOffFacts facts, bool begun = true) => BaySteps.Of(facts, begun, []).FirstOrDefault(s => !s.Done)?.Step;

    private static string Left(IReadOnlyList<BayStepState> steps, BayStep step) => steps.Single(s => s.Step == step).Left;

    private static WorkSpell Spell(int from, int? until) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, PersonId = NewId.At(Start), StartedAt = Start + Duration.FromMinutes(from),
        EndedAt = until is { } end ? Start + Duration.FromMinutes(end) : null, EndedFor = until is null ? null : PauseReason.Break,
    };
}
