using Workshop.Domain.Shims;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Shims;

/// <summary>
/// The plan is the best there is: proven on random engines against a second statement of the problem, by the absence of a
/// negative cycle in the residual graph for the shafts chosen, by the Hungarian method for every other set of shafts, and on
/// small engines by trying everything.
/// </summary>
public class PlanOptimalityTests
{
    /// <summary>A sample; with WORKSHOP_PROVEN_PLANS=1000 in the environment the campaign of a thousand.</summary>
    private static readonly int Plans = int.Parse(
        Environment.GetEnvironmentVariable("WORKSHOP_PROVEN_PLANS") ?? "200", System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public void Plans_of_8_to_32_valves_and_up_to_400_shims_are_proven_optimal()
    {
        var random = new RandomSource(1_204);
        var changed = 0;
        for (var trial = 0; trial < Plans; trial++)
        {
            var (cylinders, perSide) = random.Pick([(2, 2), (4, 1), (3, 2), (4, 2), (6, 2), (8, 2)]);
            var task = RandomPlans.Draw(random, cylinders, perSide, random.WholeNumber(5, 400));
            var reference = new PlanReference(task);

            var plan = ShimPlanner.For(task);

            changed += plan.Totals.Changed;
            Assert.Equal(reference.CostOf(plan), reference.Pack(plan.Totals));
            Assert.False(reference.HasNegativeCycle(plan), $"Plan {trial} can be bettered by handing shims round.");
            Assert.True(reference.Least() == reference.Pack(plan.Totals), $"Plan {trial}: another set of shafts is better.");
        }

        Assert.True(changed > Plans, "The engines drawn hardly need any shims, so nothing was proven.");
    }

    [Fact]
    public void Plans_of_up_to_7_valves_are_as_good_as_trying_everything()
    {
        var random = new RandomSource(77);
        for (var trial = 0; trial < 300; trial++)
        {
            var (cylinders, perSide) = random.Pick([(1, 1), (1, 2), (2, 1), (3, 1), (1, 3)]);
            var task = RandomPlans.Draw(random, cylinders, perSide, random.WholeNumber(0, 60));
            if (random.Chance(0.5) && task.Measured.Count < 6)
            {
                continue;
            }

            var reference = new PlanReference(task);

            Assert.Equal(reference.LeastByTryingEverything(), reference.Pack(ShimPlanner.For(task).Totals));
        }
    }

    /// <summary>The proof can fail: a plan with two shims exchanged has a negative cycle.</summary>
    [Fact]
    public void A_worse_plan_is_found_out()
    {
        var random = new RandomSource(5);
        var found = 0;
        for (var trial = 0; trial < 50; trial++)
        {
            var task = RandomPlans.Draw(random, 4, 2, 200);
            var (reference, plan) = (new PlanReference(task), ShimPlanner.For(task));
            var fitted = plan.Valves.Where(v => v.Shim is not null).Select(v => (Valve: v, Other: v.Alternatives
                .LastOrDefault(a => a.Shim is { Source: LotSource.Box } && plan.Valves.All(p => p.Shim?.Code != a.Shim.Code))?.Shim))
                .FirstOrDefault(v => v.Other is not null);
            if (fitted.Valve is null)
            {
                continue;
            }

            var spoiled = fitted.Valve with { Shim = fitted.Other };
            var worse = plan with { Valves = [.. plan.Valves.Select(v => v.Valve == spoiled.Valve ? spoiled : v)] };
            if (reference.CostOf(worse) > reference.CostOf(plan))
            {
                Assert.True(reference.HasNegativeCycle(worse));
                found++;
            }
        }

        Assert.True(found > 5);
    }

    /// <summary>What an alternative is said to cost is what the best plan costs once it is locked.</summary>
    [Fact]
    public void An_alternative_costs_what_locking_it_costs()
    {
        var random = new RandomSource(9);
        var compared = 0;
        for (var trial = 0; trial < 60; trial++)
        {
            var task = RandomPlans.Draw(random, 2, 2, 80);
            var plan = ShimPlanner.For(task);
            foreach (var valve in plan.Valves)
            {
                foreach (var alternative in valve.Alternatives)
                {
                    var locked = ShimPlanner.For(task with
                    {
                        Options = task.Options with
                        {
                            Locked = new Dictionary<Domain.EngineModels.ValveKey, string> { [valve.Valve] = alternative.Shim?.Code ?? ShimLot.Stay },
                        },
                        ShaftsOut = task.ShaftsOut.Concat(plan.Shafts.Select(s => s.Code)).ToHashSet(),
                    });
                    Assert.Empty(locked.SetAside);

                    // With the plan's shafts out already nothing more has to come out for it, or it is cheaper still to open more.
                    if (locked.Shafts.Count == 0)
                    {
                        Assert.Equal(alternative.Totals with { Shafts = 0 }, locked.Totals);
                        compared++;
                    }
                }
            }
        }

        Assert.True(compared > 100);
    }

    /// <summary>More valves than any motorcycle has, all in need of a shim: the packed aims still fit into 64 bits.</summary>
    [Fact]
    public void Sixty_four_valves_that_all_need_a_shim_do_not_overflow()
    {
        var task = RandomPlans.Draw(new RandomSource(64), 16, 2, 400);
        var allOut = task with
        {
            Measured =
            [
                .. task.Measured.Select(m => m with
                {
                    Lobes = m.Lobes.ToDictionary(l => l.Key, _ => Domain.Clearances.Bracket.Of(
                        Domain.Clearances.BracketKind.GoAndNoGo, Domain.Measures.Clearance.FromMillimetres(0.02m), Domain.Measures.Clearance.FromMillimetres(0.03m))),
                }),
            ],
            Options = task.Options with { Guard = Domain.Clearances.GuardBand.At95Percent, SetAll = false },
            Leaving = (lobe, mm) => mm > 0.14m ? 0.3 : 0.01,
        };

        var plan = ShimPlanner.For(allOut);
        var reference = new PlanReference(allOut);

        Assert.Equal(64, plan.Valves.Count);
        Assert.True(plan.Totals.Changed > 40);
        Assert.Equal(reference.Least(), reference.Pack(plan.Totals));
    }
}
