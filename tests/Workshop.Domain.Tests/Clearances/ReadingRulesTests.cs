using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using static Workshop.Domain.Tests.Shims.ShimCases;

namespace Workshop.Domain.Tests.Clearances;

public class ReadingRulesTests
{
    private static readonly Guid Person = new(1, 0, 0, [0, 0, 0, 0, 0, 0, 0, 1]);

    [Fact]
    public void A_valve_that_the_engine_lacks_is_told_which_it_has() => Assert.Equal(
        "readings[2].valve is 4-exhaust-1: the engine has no such valve; it has 1-intake-1, 1-exhaust-1, 1-exhaust-2.",
        ReadingRules.FaultOfValve("readings[2].valve", new ValveKey(4, Side.Exhaust, 1), Finger())?.Sentence);

    [Theory]
    [InlineData(Side.Intake, 2, true)]
    [InlineData(Side.Intake, 3, false)]
    [InlineData(Side.Exhaust, 1, true)]
    [InlineData(Side.Exhaust, 2, false)]
    [InlineData(Side.Exhaust, 0, false)]
    public void A_lobe_must_act_on_its_valve(Side side, int lobe, bool possible) =>
        Assert.Equal(possible, ReadingRules.FaultOfLobe("lobe", new ValveKey(1, side, 1), lobe, Finger()) is null);

    [Fact]
    public void Attempts_count_on_for_each_lobe_and_stage_and_the_last_one_stands()
    {
        var first = Row(Exhaust, Stage.AsFound, 0.20m, attempt: 1);
        var second = Row(Exhaust, Stage.AsFound, 0.22m, attempt: 2);
        ClearanceReading[] rows = [second, Row(Exhaust, Stage.AsLeft, 0.25m, attempt: 1), first, Row(Exhaust2, Stage.AsFound, 0.21m, attempt: 1)];

        Assert.Equal(3, ReadingRules.NextAttempt(rows, new LobeKey(Exhaust), Stage.AsFound));
        Assert.Equal(2, ReadingRules.NextAttempt(rows, new LobeKey(Exhaust), Stage.AsLeft));
        Assert.Equal(1, ReadingRules.NextAttempt(rows, new LobeKey(Intake, 2), Stage.AsFound));
        Assert.Same(second, ReadingRules.Standing(rows, new LobeKey(Exhaust), Stage.AsFound));
        Assert.Null(ReadingRules.Standing(rows, new LobeKey(Intake), Stage.AsFound));
    }

    [Fact]
    public void What_is_carried_over_keeps_the_measurement_and_says_that_it_is_none_of_its_own()
    {
        var found = Row(Exhaust, Stage.AsFound, 0.22m, attempt: 3);
        var later = At(60);

        var left = ReadingRules.CarriedAsLeft(Guid.Empty, found, Person, later);
        var corrected = ReadingRules.CarriedAsLeft(Person, found, Person, later, left);

        Assert.Equal((Stage.AsLeft, 1, true), (left.Stage, left.Attempt, left.NotRemeasured));
        Assert.Equal((found.Bracket, found.MeasuredAt, found.MeasuredBy), (left.Bracket, left.MeasuredAt, left.MeasuredBy));
        Assert.Equal((Person, later), (left.EnteredBy, left.EnteredAt));
        Assert.Equal((2, left.Id), (corrected.Attempt, corrected.SupersedesId));
    }

    [Fact]
    public void A_lobe_without_limits_is_a_fault_of_the_specification() => Assert.Throws<InvalidOperationException>(
        () => ReadingRules.LimitsOf(Finger() with { Limits = [] }, new LobeKey(Exhaust)));
}
