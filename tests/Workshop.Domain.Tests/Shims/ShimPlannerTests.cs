using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using static Workshop.Domain.Tests.Shims.ShimCases;

namespace Workshop.Domain.Tests.Shims;

public class ShimPlannerTests
{
    /// <summary>0.085 mm found, 0.25 aimed at, ratio 0.6: 2.300 + (0.085 - 0.25) / 0.6 = 2.025 mm.</summary>
    [Fact]
    public void A_tight_valve_gets_the_nearest_thinner_shim_and_the_clearance_that_it_gives()
    {
        var proposal = Of(Exhaust, Found(Exhaust, 2.300m, (0.08m, 0.09m)), Box(2.000m, 2.050m, 2.300m));

        Assert.Equal(ShimAdvice.FitShim, proposal.Advice);
        Assert.Equal(2.025m, proposal.IdealMm!.Value, 12);
        Assert.Equal(2.000m, proposal.New?.Millimetres);
        Assert.Equal(0.265m, Assert.Single(proposal.Lobes).PredictedMm);
        Assert.Contains("2.025 mm is ideal, from the middle of the bracket", proposal.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_shims_equally_near_the_thinner_leaves_more_clearance() =>
        Assert.Equal(2.000m, Of(Exhaust, Found(Exhaust, 2.300m, (0.08m, 0.09m)), Box(2.050m, 2.000m)).New?.Millimetres);

    [Fact]
    public void Of_the_same_thickness_a_new_one_goes_before_a_used_one()
    {
        var used = new ShimLot("used", Mm(2.025m), StockCondition.Used, LotSource.Box, 1, "A1");
        var measured = Found(Exhaust, 2.300m, (0.08m, 0.09m));

        Assert.Equal(StockCondition.New, Of(Exhaust, measured, [used, .. Box(2.025m)]).Shim?.Condition);
        var proposal = Of(Exhaust, measured, [used]);
        Assert.Equal(StockCondition.Used, proposal.Shim?.Condition);
        Assert.Contains("a used one from the box", proposal.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_valve_within_its_limits_keeps_its_shim() =>
        Assert.Equal(ShimAdvice.Keep, Of(Exhaust, Found(Exhaust, 2.300m, (0.21m, 0.22m)), Box(2.225m)).Advice);

    [Fact]
    public void Asked_for_all_a_valve_within_its_limits_gets_a_nearer_shim_but_never_a_farther_one()
    {
        var measured = Found(Exhaust, 2.300m, (0.21m, 0.22m));

        Assert.Equal(2.250m, Of(Exhaust, measured, Box(2.250m), all: true).New?.Millimetres);
        Assert.Equal(ShimAdvice.Keep, Of(Exhaust, measured, Box(2.300m), all: true).Advice);
    }

    [Fact]
    public void Each_shim_goes_to_one_valve_only_and_to_the_farthest_first()
    {
        var far = Found(Exhaust, 2.300m, (0.05m, 0.06m));
        var near = Found(Exhaust2, 2.300m, (0.08m, 0.09m));

        var proposals = ShimPlanner.For(Task(Finger(), [near, far], Box(2.000m))).Valves.ToDictionary(p => p.Valve);

        Assert.Equal(ShimAdvice.FitShim, proposals[Exhaust].Advice);
        Assert.Equal(ShimAdvice.OrderShim, proposals[Exhaust2].Advice);
        Assert.Equal(2.025m, proposals[Exhaust2].New?.Millimetres);
        Assert.Contains("order 2.025 mm", proposals[Exhaust2].Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_lobes_on_one_valve_share_a_shim_that_satisfies_both()
    {
        // Ideals 2.00 + (0.245 - 0.15)/0.6 = 2.1583 and 2.00 + (0.205 - 0.16)/0.6 = 2.0750: the mean of equal ratios is 2.1167.
        var proposal = Of(Intake, Found(Intake, 2.000m, (0.24m, 0.25m), (0.20m, 0.21m)), Box(2.075m, 2.125m, 2.150m));

        Assert.Equal(2.116667m, proposal.IdealMm!.Value, 6);
        Assert.Equal(2.125m, proposal.New?.Millimetres);
        Assert.Equal([0.17m, 0.13m], proposal.Lobes.Select(l => l.PredictedMm!.Value));
    }

    [Fact]
    public void Lobes_that_no_one_thickness_satisfies_are_for_inspection()
    {
        var proposal = Of(Intake, Found(Intake, 2.000m, (0.24m, 0.25m), (0.05m, 0.06m)), Box(2.000m));

        Assert.Equal(ShimAdvice.Inspect, proposal.Advice);
        Assert.Contains("No one thickness", proposal.Why, StringComparison.Ordinal);
        Assert.Null(proposal.New);
    }

    [Fact]
    public void The_second_lobe_must_be_measured_before_a_shim_is_chosen()
    {
        var proposal = Of(Intake, Found(Intake, 2.000m, (0.24m, 0.25m)), Box(2.150m));

        Assert.Equal(ShimAdvice.MeasureClearance, proposal.Advice);
        Assert.Contains("cylinder 1, intake 1, lobe 2", proposal.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_need_beyond_the_permitted_thickness_is_never_ground_or_stacked_but_inspected()
    {
        var proposal = Of(Exhaust, Found(Exhaust, 1.250m, (0.08m, 0.09m)), Box(1.200m));

        Assert.Equal(ShimAdvice.Inspect, proposal.Advice);
        Assert.Contains("1.20 to 3.20 mm is permitted", proposal.Why, StringComparison.Ordinal);
        Assert.EndsWith("Do not grind or stack shims; the valve, its seat or the retainer needs inspection.", proposal.Why, StringComparison.Ordinal);
        Assert.Null(proposal.New);
    }

    [Fact]
    public void The_last_permitted_shim_is_still_offered_where_it_brings_the_valve_inside_its_limits()
    {
        // Ideal 1.300 + (0.135 - 0.25)/0.6 = 1.108 mm, below the 1.200 mm permitted; 1.200 mm gives 0.195 mm: outside.
        Assert.Equal(ShimAdvice.Inspect, Of(Exhaust, Found(Exhaust, 1.300m, (0.13m, 0.14m)), Box(1.200m)).Advice);

        // Found 0.155 mm: 1.200 mm gives 0.215 mm, inside.
        var proposal = Of(Exhaust, Found(Exhaust, 1.300m, (0.15m, 0.16m)), Box(1.200m));
        Assert.Equal(1.200m, proposal.New?.Millimetres);
        Assert.Contains("the last that a shim can do", proposal.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shim_outside_the_permitted_range_is_not_taken_from_the_box() =>
        Assert.Equal(ShimAdvice.OrderShim, Of(Exhaust, Found(Exhaust, 3.100m, (0.34m, 0.35m)), Box(3.250m)).Advice);

    [Fact]
    public void An_unknown_shim_must_be_measured_first() =>
        Assert.Equal(ShimAdvice.MeasureShim, Of(Exhaust, Found(Exhaust, null, (0.08m, 0.09m)), Box(2.000m)).Advice);

    [Fact]
    public void An_open_bracket_gives_no_thickness()
    {
        var none = new MeasuredValve(
            Exhaust, new Dictionary<int, Bracket> { [1] = Bracket.Of(BracketKind.NoneEnters, null, Clearance.FromMillimetres(0.05m)) }, Mm(2.300m));
        var loose = new MeasuredValve(
            Exhaust, new Dictionary<int, Bracket> { [1] = Bracket.Of(BracketKind.ThickestIsLoose, Clearance.FromMillimetres(0.40m), null) }, Mm(2.300m));

        Assert.Contains("No blade enters", Of(Exhaust, none, Box(2.000m)).Why, StringComparison.Ordinal);
        Assert.Contains("thicker blades", Of(Exhaust, loose, Box(2.000m)).Why, StringComparison.Ordinal);
        Assert.All([none, loose], m => Assert.Equal(ShimAdvice.MeasureClearance, Of(Exhaust, m, Box(2.000m)).Advice));
    }

    [Fact]
    public void What_the_blades_left_open_is_decided_before_a_cover_is_opened_further()
    {
        var proposal = Of(Exhaust, Found(Exhaust, 2.300m, (0.15m, 0.25m)), Box(2.000m));

        Assert.Equal(ShimAdvice.TryBlade, proposal.Advice);
        Assert.StartsWith("Not decided: try blade 0.20 mm", proposal.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_valve_changed_since_its_reading_is_measured_as_left_first() => Assert.Equal(
        ShimAdvice.MeasureAsLeft, Of(Exhaust, Found(Exhaust, 2.300m, (0.08m, 0.09m)) with { ChangedSince = true }, Box(2.000m)).Advice);

    [Fact]
    public void A_screw_is_set_to_the_clearance_aimed_at()
    {
        var screws = Finger() with { ValveTrain = ValveTrainKind.ScrewAndLocknut, Shims = null };
        var proposal = ShimPlanner.For(Task(screws, [Found(Exhaust, null, (0.08m, 0.09m))], [])).Valves.Single(p => p.Valve == Exhaust);

        Assert.Equal(ShimAdvice.SetScrew, proposal.Advice);
        Assert.Contains("set the screw to 0.25 mm", proposal.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_valve_of_the_engine_is_spoken_of_in_its_order()
    {
        var proposals = ShimPlanner.For(Task(Finger(), [], [])).Valves;

        Assert.Equal(Finger().Valves.Select(v => v.Key).Order(), proposals.Select(p => p.Valve));
        Assert.All(proposals, p => Assert.Equal(ShimAdvice.MeasureClearance, p.Advice));
    }

    private static ValvePlan Of(ValveKey valve, MeasuredValve measured, IEnumerable<ShimLot> box, bool all = false) =>
        ShimPlanner.For(Task(Finger(), [measured], box, new PlanOptions { SetAll = all })).Valves.Single(p => p.Valve == valve);
}
