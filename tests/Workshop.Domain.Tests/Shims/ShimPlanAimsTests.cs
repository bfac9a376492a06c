using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using static Workshop.Domain.Tests.Shims.ShimCases;

namespace Workshop.Domain.Tests.Shims;

/// <summary>The order of the aims, on cases small enough to reckon by hand. Exhaust: 0.20 to 0.30 mm, set to 0.25, ratio 0.6.</summary>
public class ShimPlanAimsTests
{
    private static readonly ValveKey Front = new(1, Side.Exhaust, 1);
    private static readonly ValveKey FrontToo = new(1, Side.Exhaust, 2);
    private static readonly ValveKey Rear = new(2, Side.Exhaust, 1);
    private static readonly ValveKey RearToo = new(2, Side.Exhaust, 2);

    /// <summary>Exhaust 1 is tight (0.155 with 2.100 in: 1.942 is ideal), exhaust 2 wide (0.345 with 1.950 in: 2.108): exchanged, both are right.</summary>
    [Fact]
    public void Two_valves_exchange_their_shims_and_the_box_keeps_its_own()
    {
        var plan = Plan([Found(Front, 2.100m, (0.15m, 0.16m)), Found(FrontToo, 1.950m, (0.34m, 0.35m))], Box(1.950m, 2.100m));

        Assert.Equal((LotSource.Valve, FrontToo), (At(plan, Front).Shim!.Source, At(plan, Front).Shim!.Valve));
        Assert.Equal((LotSource.Valve, Front), (At(plan, FrontToo).Shim!.Source, At(plan, FrontToo).Shim!.Valve));
        Assert.Equal((0, 2, 0), (plan.Totals.FromBox, plan.Totals.Changed, plan.Totals.Outside));
        Assert.Equal("Front", Assert.Single(plan.Shafts).Name);
    }

    [Fact]
    public void By_the_rule_against_moving_shims_the_same_engine_takes_both_from_the_box() => Assert.Equal(
        2,
        Plan([Found(Front, 2.100m, (0.15m, 0.16m)), Found(FrontToo, 1.950m, (0.34m, 0.35m))], Box(1.950m, 2.100m),
            new PlanOptions { MayMoveBetweenValves = false }).Totals.FromBox);

    /// <summary>What suits the tight front valve lies in the rear head only; the box would do too, and opens no second shaft.</summary>
    [Fact]
    public void A_shaft_stays_in_even_if_a_nearer_shim_lies_under_it()
    {
        var plan = Plan([Found(Front, 2.100m, (0.15m, 0.16m)), Found(Rear, 1.942m, (0.25m, 0.26m))], Box(1.900m));

        Assert.Equal(LotSource.Box, At(plan, Front).Shim!.Source);
        Assert.Equal(["Front"], plan.Shafts.Select(s => s.Name));
    }

    [Fact]
    public void A_shaft_comes_out_where_nothing_else_helps_and_the_donor_gets_another()
    {
        var plan = Plan([Found(Front, 2.100m, (0.15m, 0.16m)), Found(Rear, 1.942m, (0.25m, 0.26m))], Box(1.975m, 2.300m));
        Assert.Equal(["Front"], plan.Shafts.Select(s => s.Name));

        // 2.300 suits nobody; the rear's shim suits the front, and of the box only 1.970 suits the rear, only just not the front.
        var both = Plan([Found(Front, 2.150m, (0.15m, 0.16m)), Found(Rear, 1.992m, (0.21m, 0.22m))], Box(1.905m, 1.890m));
        Assert.Equal(0, both.Totals.Outside);
    }

    [Fact]
    public void A_shaft_that_is_out_already_costs_nothing()
    {
        var task = Task(Engine(), [Found(Front, 2.100m, (0.15m, 0.16m))], Box(1.950m)) with { ShaftsOut = new HashSet<string> { "front" } };

        Assert.Empty(ShimPlanner.For(task).Shafts);
        Assert.Equal(1.950m, At(ShimPlanner.For(task), Front).New?.Millimetres);
    }

    /// <summary>Shim over bucket: nothing but the bucket is in the way.</summary>
    [Fact]
    public void Over_the_bucket_no_shaft_comes_out() => Assert.Empty(ShimPlanner.For(Task(
        Engine() with { ValveTrain = ValveTrainKind.ShimOverBucket }, [Found(Front, 2.100m, (0.15m, 0.16m))], Box(1.950m))).Shafts);

    /// <summary>Within its limits now, but its forecast says that it will leave them: it is changed too, where that helps.</summary>
    [Fact]
    public void A_valve_that_is_likely_to_leave_its_limits_is_changed_before_it_does()
    {
        var task = Task(Engine(), [Found(Front, 2.100m, (0.21m, 0.22m)), Found(FrontToo, 2.100m, (0.25m, 0.26m))], Box(2.050m)) with
        {
            Leaving = (_, mm) => mm < 0.23m ? 0.7 : 0.02,
        };

        var plan = ShimPlanner.For(task);

        Assert.Equal(2.050m, At(plan, Front).New?.Millimetres);
        Assert.Contains("likely to leave them before the next check", At(plan, Front).Why, StringComparison.Ordinal);
        Assert.Equal((0.7, 0.02), (At(plan, Front).Lobes[0].LeavesNow!.Value, At(plan, Front).Lobes[0].LeavesThen!.Value));
        Assert.Equal(ShimAdvice.Keep, At(plan, FrontToo).Advice);
        Assert.Equal(ShimAdvice.Keep, At(ShimPlanner.For(task with { Options = new PlanOptions { Threshold = 0.8 } }), Front).Advice);
    }

    /// <summary>A valve outside is brought inside even where it stays likely to leave either way.</summary>
    [Fact]
    public void Outside_weighs_more_than_likely()
    {
        var plan = ShimPlanner.For(Task(Engine(), [Found(Front, 2.100m, (0.15m, 0.16m))], Box(1.950m)) with { Leaving = (_, _) => 0.9 });

        Assert.Equal((0, 1), (plan.Totals.Outside, plan.Totals.Likely));
        Assert.Equal(ShimAdvice.FitShim, At(plan, Front).Advice);
    }

    /// <summary>
    /// By the guard band exhaust 2 (0.205, a bracket of 0.01: u = 0.0042 with blades, 1.65 u = 0.0069) is near its limit. Its shaft is out
    /// for exhaust 1, and what comes out of that one suits it: nothing more from the box, nothing more to open.
    /// </summary>
    [Fact]
    public void Near_a_limit_under_a_shaft_that_is_out_a_valve_is_changed_at_no_cost()
    {
        MeasuredValve[] measured = [Found(Front, 2.040m, (0.15m, 0.16m)), Found(FrontToo, 2.100m, (0.20m, 0.21m))];

        var off = Plan(measured, Box(1.875m));
        var on = Plan(measured, Box(1.875m), new PlanOptions { Guard = GuardBand.At95Percent });

        Assert.Equal(ShimAdvice.Keep, At(off, FrontToo).Advice);
        Assert.Equal(2.040m, At(on, FrontToo).New?.Millimetres);
        Assert.Contains("Near a limit, and a shim costs no access", At(on, FrontToo).Why, StringComparison.Ordinal);
        Assert.Equal((1, 1, 0), (on.Totals.Changed, on.Totals.FromBox, on.Totals.NearLimit));
    }

    [Fact]
    public void Near_a_limit_under_a_shaft_that_stays_in_a_valve_is_left_alone()
    {
        var plan = Plan([Found(Front, 2.100m, (0.20m, 0.21m))], Box(2.025m), new PlanOptions { Guard = GuardBand.ExpandedUncertainty });

        Assert.Equal(ShimAdvice.Keep, At(plan, Front).Advice);
        Assert.Contains("Near a limit by the guard band", At(plan, Front).Why, StringComparison.Ordinal);
        Assert.False(At(plan, Front).Offered);
    }

    /// <summary>
    /// It tightens, so it is set to the loose side: u = root(0.01²/12 + 2 x 0.6² x 0.002²) = 0.00335, twice that 0.0067, up to whole
    /// 0.001 mm: 0.30 - 0.007 = 0.293.
    /// </summary>
    [Fact]
    public void For_the_longest_life_a_valve_that_tightens_is_set_to_the_loose_side_within_limits()
    {
        var task = Task(Engine(), [Found(Front, 2.100m, (0.15m, 0.16m))], Box(1.950m, 1.875m), new PlanOptions
        {
            Aim = PlanAim.LongestLife, BladeUncertaintyMm = 0, MicrometerUncertaintyMm = 0.002m,
        }) with
        {
            DriftMmPer10000Km = new Dictionary<LobeKey, decimal> { [new(Front)] = -0.02m },
        };

        var valve = At(ShimPlanner.For(task), Front);

        Assert.Equal(0.293m, valve.Lobes[0].AimMm);
        Assert.Equal((1.875m, 0.290m), (valve.New!.Value.Millimetres, valve.Lobes[0].PredictedMm!.Value));
        Assert.Equal(45_000m, valve.Lobes[0].LastsKm);
        Assert.Equal(1.950m, At(ShimPlanner.For(task with { Options = new PlanOptions() }), Front).New?.Millimetres);
    }

    [Fact]
    public void A_history_tells_the_present_clearance_better_than_the_middle_and_the_plan_says_so()
    {
        var task = Task(Engine(), [Found(Front, 2.100m, (0.15m, 0.19m))], Box(1.950m, 1.975m)) with
        {
            Levels = new Dictionary<LobeKey, PresentLevel> { [new(Front)] = new(0.155m, 0.004) },
        };

        var plan = ShimPlanner.For(task);

        Assert.Equal("The present clearance is taken from each valve's history.", plan.Basis);
        Assert.Equal(1.950m, At(plan, Front).New?.Millimetres);
        Assert.Contains("from its history", At(plan, Front).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_chosen_by_hand_is_kept_and_the_rest_planned_around_it()
    {
        MeasuredValve[] measured = [Found(Front, 2.100m, (0.15m, 0.16m)), Found(Rear, 2.100m, (0.15m, 0.16m))];
        var free = Plan(measured, Box(1.950m, 1.900m));
        var locked = Plan(measured, Box(1.950m, 1.900m), Locked((Front, "box-1.900")));

        Assert.Equal([1.950m, 1.900m], new[] { Front, Rear }.Select(v => At(free, v).New!.Value.Millimetres).OrderDescending());
        Assert.Equal([1.900m, 1.950m], new[] { Front, Rear }.Select(v => At(locked, v).New!.Value.Millimetres));
        Assert.True(At(locked, Front).Locked);
        Assert.Contains("Chosen by hand", At(locked, Front).Why, StringComparison.Ordinal);
        Assert.Empty(locked.SetAside);
    }

    [Fact]
    public void A_valve_out_of_its_limits_may_be_left_so_by_hand()
    {
        var plan = Plan([Found(Front, 2.100m, (0.15m, 0.16m))], Box(1.950m), Locked((Front, ShimLot.Stay)));

        Assert.Equal((ShimAdvice.Keep, 1), (At(plan, Front).Advice, plan.Totals.Outside));
        Assert.Contains("by hand, outside", At(plan, Front).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Choices_that_cannot_be_kept_are_set_aside_with_the_reason()
    {
        MeasuredValve[] measured = [Found(Front, 2.100m, (0.15m, 0.16m)), Found(Rear, 2.100m, (0.15m, 0.16m))];
        var plan = Plan(measured, Box(1.950m), Locked((Front, "box-1.950"), (Rear, "box-1.950"), (FrontToo, "box-1.950"), (RearToo, "gone")));

        Assert.Equal(
            [(FrontToo, "no shim can be chosen for it yet"), (Rear, "that shim is chosen for another valve"), (RearToo, "no shim can be chosen for it yet")],
            plan.SetAside.Select(s => (s.Valve, s.Why)));
        Assert.Contains("not to be had any more", Assert.Single(Plan(measured, Box(1.950m), Locked((Front, "gone"))).SetAside).Why, StringComparison.Ordinal);
    }

    /// <summary>The front's shim is given to the rear by hand and none is left for the front: it has to be ordered, the rest stands.</summary>
    [Fact]
    public void A_valve_whose_shim_was_given_away_by_hand_has_one_ordered()
    {
        var plan = Plan([Found(Front, 2.000m, (0.25m, 0.26m)), Found(Rear, 2.150m, (0.16m, 0.17m))], [], Locked((Rear, ShimLot.CodeIn(Front))));

        Assert.Equal((ShimAdvice.OrderShim, 1), (At(plan, Front).Advice, plan.Totals.Outside));
        Assert.Equal(Front, At(plan, Rear).Shim!.Valve);
        Assert.Contains("goes to another valve by hand", At(plan, Front).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_screw_is_set_to_and_its_locknut_tightened_to_the_makers_torque()
    {
        var spec = JobCards.VisitFacts.Engine with { ValveTrain = ValveTrainKind.ScrewAndLocknut, Shims = null };
        var intake = new ValveKey(1, Side.Intake, 1);
        var plan = ShimPlanner.For(Task(spec, [Found(intake, null, (0.05m, 0.06m))], []));

        Assert.StartsWith("No shims: set the screw to 0.15 mm, tighten the cap bolt to ", At(plan, intake).Why, StringComparison.Ordinal);
    }

    /// <summary>Its own shim went into the front valve already: within its limits as it was, it must get another all the same.</summary>
    [Fact]
    public void A_valve_that_lies_empty_gets_a_shim_or_has_one_ordered()
    {
        MeasuredValve[] measured = [Found(Rear, 1.942m, (0.25m, 0.26m)) with { Empty = true }];

        var fitted = Plan(measured, [OnBench("bench", 1.950m, Front)]);
        var ordered = Plan(measured, []);

        Assert.Equal("bench", At(fitted, Rear).Shim!.Code);
        Assert.Contains("Its own shim is out.", At(fitted, Rear).Why, StringComparison.Ordinal);
        Assert.Empty(fitted.Shafts);
        Assert.Equal((ShimAdvice.OrderShim, 1.950m), (At(ordered, Rear).Advice, At(ordered, Rear).Order!.Value.Millimetres));
    }

    /// <summary>1.942 is ideal; 1.800 would give 0.335 and be outside, so it is only the nearest to be had.</summary>
    [Fact]
    public void Where_nothing_fits_the_plan_names_the_size_to_order_and_the_nearest_and_stands_for_the_rest()
    {
        var plan = Plan([Found(Front, 2.100m, (0.15m, 0.16m)), Found(Rear, 2.100m, (0.35m, 0.36m))], Box(1.800m, 2.275m));

        Assert.Equal((ShimAdvice.OrderShim, 1.950m), (At(plan, Front).Advice, At(plan, Front).Order!.Value.Millimetres));
        Assert.Equal((1.800m, 0.335m), (At(plan, Front).Nearest!.Shim!.Thickness.Millimetres, At(plan, Front).Nearest!.PredictedMm[0]));
        Assert.Equal(2.275m, At(plan, Rear).New?.Millimetres);
    }

    [Fact]
    public void Each_alternative_says_what_it_costs_beside_the_plan()
    {
        var bench = OnBench("bench", 1.920m, RearToo);
        var plan = Plan([Found(Front, 2.100m, (0.15m, 0.16m))], [bench, .. Box(1.950m)]);

        var valve = At(plan, Front);

        Assert.Equal(("bench", StockCondition.Used), (valve.Shim!.Code, valve.Shim.Condition));
        Assert.Contains("1.95 mm of the box would be nearer; this one takes nothing from it", valve.Why, StringComparison.Ordinal);
        Assert.Equal(
            ["1 shim from the box more, 0.008 mm nearer to the aims in all", "1 valve outside its limits more, 1 valve changed fewer, 0.082 mm farther from the aims in all"],
            valve.Alternatives.Select(a => a.Cost));
    }

    private static PlanOptions Locked(params (ValveKey Valve, string Code)[] locks) => new() { Locked = locks.ToDictionary(l => l.Valve, l => l.Code) };

    private static ShimPlan Plan(IEnumerable<MeasuredValve> measured, IEnumerable<ShimLot> shims, PlanOptions? options = null) =>
        ShimPlanner.For(Task(Engine(), measured, shims, options));

    private static ValvePlan At(ShimPlan plan, ValveKey valve) => plan.Valves.Single(v => v.Valve == valve);

    private static EngineSpecification Engine() => Finger() with
    {
        Valves = [new(Front), new(FrontToo), new(Rear), new(RearToo)],
        Camshafts = [new("front", "Front", [Front, FrontToo]), new("rear", "Rear", [Rear, RearToo])],
    };
}
