using CsCheck;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using static Workshop.Domain.Tests.Shims.ShimCases;

namespace Workshop.Domain.Tests.Shims;

/// <summary>What must hold for every engine, box and set of readings.</summary>
public class ShimPlanProperties
{
    private const int Many = 5_000;

    private static readonly Gen<(decimal Go, decimal NoGo)> AnyBracket =
        Gen.Select(Gen.Int[2, 40], Gen.Int[1, 5]).Select((go, width) => (go / 100m, (go + width) / 100m));

    private static readonly Gen<decimal> AnyThickness = Gen.Int[1_150, 3_250].Select(t => t / 1000m);

    private static readonly Gen<MeasuredValve[]> AnyMeasured = Gen.Select(
        AnyBracket, AnyBracket, AnyBracket, AnyBracket, AnyThickness.Array[3]).Select((lobe1, lobe2, exhaust, exhaust2, shims) =>
        new[]
        {
            Found(Intake, shims[0], lobe1, lobe2), Found(Exhaust, shims[1], exhaust), Found(Exhaust2, shims[2], exhaust2),
        });

    private static readonly Gen<(EngineSpecification Engine, MeasuredValve[] Measured, decimal[] Box, bool All)> AnyCase =
        Gen.Select(Gen.Int[40, 100], Gen.Int[40, 100], AnyMeasured, AnyThickness.Array[0, 12], Gen.Bool).Select(
            (ratio1, ratio2, measured, box, all) => (Engine(ratio1 / 100m, ratio2 / 100m), measured, box, all));

    [Fact]
    public void A_shim_that_is_advised_leaves_every_lobe_inside_its_limits() =>
        AnyCase.Sample(
            c =>
            {
                var fitted = Plan(c).Where(p => p.Advice is ShimAdvice.FitShim or ShimAdvice.OrderShim);
                Assert.All(fitted.SelectMany(p => p.Lobes), l =>
                    Assert.InRange(l.PredictedMm!.Value, l.Limits.Lower.Millimetres, l.Limits.Upper.Millimetres));
            },
            iter: Many);

    [Fact]
    public void Only_permitted_thicknesses_are_advised_and_each_shim_of_the_box_once() =>
        AnyCase.Sample(
            c =>
            {
                var plan = Plan(c);
                Assert.All(plan.Where(p => p.New is not null), p => Assert.InRange(p.New!.Value.Millimetres, 1.2m, 3.2m));
                Assert.All(
                    plan.Where(IsFromBox).GroupBy(p => p.New!.Value.Millimetres),
                    taken => Assert.True(taken.Count() <= c.Box.Count(t => t == taken.Key)));
            },
            iter: Many);

    [Fact]
    public void Nothing_else_that_is_left_in_the_box_would_come_nearer_to_the_aim() =>
        AnyCase.Sample(
            c =>
            {
                var plan = Plan(c);
                var taken = plan.Where(IsFromBox).Select(p => p.New!.Value.Millimetres).ToList();
                var left = c.Box.ToList();
                taken.ForEach(t => left.Remove(t));
                Assert.All(plan.Where(IsFromBox), p =>
                {
                    var best = Distance(p, p.New!.Value.Millimetres);
                    Assert.All(left.Where(t => t is >= 1.2m and <= 3.2m && IsInside(p, t)), t => Assert.True(Distance(p, t) > best - 0.001m));
                });
            },
            iter: Many);

    /// <summary>The ideal of two lobes is where the worse one is best: a step to either side makes it worse.</summary>
    [Fact]
    public void The_ideal_is_the_best_compromise_between_two_lobes() =>
        AnyCase.Sample(
            c => Assert.All(Plan(c).Where(p => p.IdealMm is not null), p =>
            {
                var best = Distance(p, p.IdealMm!.Value);
                Assert.True(Distance(p, p.IdealMm.Value - 0.001m) > best - 1e-12m);
                Assert.True(Distance(p, p.IdealMm.Value + 0.001m) > best - 1e-12m);
                if (p.Lobes.Count == 1)
                {
                    Assert.Equal(0, best, 15);
                }
            }),
            iter: Many);

    [Fact]
    public void A_valve_out_of_its_limits_is_never_left_without_advice() =>
        AnyCase.Sample(
            c => Assert.All(
                Plan(c).Where(p => p.Lobes.Any(l => l.Verdict.IsOut)),
                p => Assert.Contains(p.Advice, new[] { ShimAdvice.FitShim, ShimAdvice.OrderShim, ShimAdvice.Inspect })),
            iter: Many);

    [Fact]
    public void Advice_does_not_depend_on_the_order_of_box_and_valves() =>
        AnyCase.Sample(
            c =>
            {
                var turned = ShimPlanner.For(Task(c.Engine, c.Measured.Reverse(), Box([.. c.Box.Reverse()]), new PlanOptions { SetAll = c.All })).Valves;
                Assert.Equal(Plan(c).Select(p => (p.Valve, p.Advice, p.New, p.Why)), turned.Select(p => (p.Valve, p.Advice, p.New, p.Why)));
            },
            iter: Many);

    private static IReadOnlyList<ValvePlan> Plan((EngineSpecification Engine, MeasuredValve[] Measured, decimal[] Box, bool All) c) =>
        ShimPlanner.For(Task(c.Engine, c.Measured, Box(c.Box), new PlanOptions { SetAll = c.All })).Valves;

    private static bool IsFromBox(ValvePlan plan) => plan.Shim?.Source == LotSource.Box;

    private static decimal Distance(ValvePlan proposal, decimal thickness) => proposal.Lobes.Max(l =>
        decimal.Abs(Predicted(proposal, l, thickness) - l.Limits.SetTo.Millimetres));

    private static bool IsInside(ValvePlan proposal, decimal thickness) => proposal.Lobes.All(l =>
        Predicted(proposal, l, thickness) >= l.Limits.Lower.Millimetres && Predicted(proposal, l, thickness) <= l.Limits.Upper.Millimetres);

    private static decimal Predicted(ValvePlan proposal, LobeOutlook lobe, decimal thickness) =>
        lobe.LevelMm!.Value + (lobe.Limits.LeverRatio.Value * (proposal.Old!.Value.Millimetres - thickness));

    private static EngineSpecification Engine(decimal ratio1, decimal ratio2) => Finger() with
    {
        Limits =
        [
            Limits(Side.Intake, 1, 0.10m, 0.20m, 0.15m, ratio1),
            Limits(Side.Intake, 2, 0.10m, 0.22m, 0.16m, ratio2),
            Limits(Side.Exhaust, 1, 0.20m, 0.30m, 0.25m, ratio1),
        ],
    };
}
