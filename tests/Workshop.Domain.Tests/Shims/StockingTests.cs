using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Shims;

public class StockingTests
{
    private static readonly Provenance Source = new("made up for this test", "1");
    private static readonly BoxMap Box = new(Mm(1.60m), Mm(3.20m), 0.02m, 10);

    [Fact]
    public void A_valve_that_is_sure_to_need_a_shim_asks_for_one_in_all_around_the_size_it_will_want()
    {
        // 0.10 expected against 0.15 set-to at ratio 0.5: 0.10 mm thinner than 2.50.
        var demand = ShimDemand.Of([Valve(clearance: 0.08, sd: 0.002, needs: 1, ratio: 0.5m)], Box);

        Assert.Equal(1, demand.Sizes.Sum(s => s.Expected), 9);
        Assert.Equal(0, demand.Beyond, 9);
        var (thinnest, thickest) = (Mm(2.34m), Mm(2.38m));
        Assert.InRange(demand.Sizes.Where(s => s.Size >= thinnest && s.Size <= thickest).Sum(s => s.Expected), 0.999, 1);
        Assert.Equal(Mm(2.36m), demand.Sizes.MaxBy(s => s.Expected)!.Size);
    }

    [Fact]
    public void Only_clearances_outside_the_limits_ask()
    {
        // Half of the spread is above the lower limit of 0.10: what asks is below it, so thinner than 2.50 - 0.05.
        var demand = ShimDemand.Of([Valve(clearance: 0.10, sd: 0.01, needs: 0.5)], Box);

        Assert.Equal(0.5, demand.Sizes.Sum(s => s.Expected), 9);
        var lowest = Mm(2.46m);
        Assert.Equal(0, demand.Sizes.Where(s => s.Size > lowest).Sum(s => s.Expected), 9);
    }

    [Fact]
    public void What_an_engine_does_not_permit_is_asked_of_nobody_but_inspection()
    {
        var valve = Valve(clearance: 0.05, sd: 0.002, needs: 1, shim: 1.62m);

        var demand = ShimDemand.Of([valve], new BoxMap(Mm(1.40m), Mm(3.20m), 0.02m, 10));

        Assert.InRange(demand.Beyond, 0.999, 1);
        Assert.All(demand.Sizes.Where(s => s.Size < valve.Permitted.Smallest), s => Assert.Equal(0, s.Expected));
    }

    [Fact]
    public void Valves_that_come_together_make_the_demand_wider_than_Poisson_and_the_level_higher()
    {
        var alone = Enumerable.Range(0, 16).Select(i => Valve(0.08, 0.004, 0.6, comes: 0.5, motorcycle: i + 1)).ToList();
        var together = Enumerable.Range(0, 16).Select(i => Valve(0.08, 0.004, 0.6, comes: 0.5, motorcycle: (i / 8) + 1)).ToList();

        var (apart, shared) = (ShimDemand.Of(alone, Box), ShimDemand.Of(together, Box));
        var wanted = apart.Sizes.MaxBy(s => s.Expected)!.Size;
        var (one, other) = (apart.Sizes.Single(s => s.Size == wanted), shared.Sizes.Single(s => s.Size == wanted));

        Assert.Equal(one.Expected, other.Expected, 9);
        Assert.True(one.Variance < one.Expected && other.Variance > other.Expected);
        Assert.IsType<PoissonLaw>(one.Law);
        Assert.IsType<NegativeBinomialLaw>(other.Law);
        Assert.True(other.Law.SmallestCovering(0.95) > one.Law.SmallestCovering(0.95));
    }

    /// <summary>Mean and variance against drawing visits and valves at random.</summary>
    [Fact]
    public void Mean_and_variance_are_those_of_drawn_visits()
    {
        var valves = Enumerable.Range(0, 12).Select(i => Valve(0.09, 0.01, 0.7, comes: 0.6, motorcycle: (i / 4) + 1)).ToList();
        var size = ShimDemand.Of(valves, Box).Sizes.MaxBy(s => s.Expected)!;
        var asks = valves[0].NeedsShim * valves[0].Wants((double)size.Size.Millimetres - 0.01, (double)size.Size.Millimetres + 0.01);
        var random = new RandomSource(4417);
        var counts = Enumerable.Range(0, 200_000).Select(_ => Enumerable.Range(0, 3)
            .Where(_ => random.Chance(0.6)).Sum(_ => Enumerable.Range(0, 4).Count(_ => random.Chance(asks)))).ToList();

        var mean = counts.Average();
        // Three standard errors of 200,000 draws: 0.016 of the mean, 0.05 of the variance.
        Assert.Equal(size.Expected, mean, 0.02);
        Assert.Equal(size.Variance, counts.Average(c => (c - mean) * (c - mean)), 0.05);
    }

    [Fact]
    public void The_order_fills_up_to_the_level_and_never_below_zero()
    {
        var demand = new DemandBySize([new SizeDemand(Mm(2.0m), 2, 2), new SizeDemand(Mm(2.02m), 2, 4), new SizeDemand(Mm(2.04m), 0, 0)], 0);

        var proposed = Stocking.Propose(demand, new Dictionary<ShimThickness, int> { [Mm(2.0m)] = 3, [Mm(2.04m)] = 7 }, 0.95);

        // Poisson 2: 5; negative binomial with mean 2 and variance 4: 6 (R 4.2.2: qpois(0.95, 2), qnbinom(0.95, 2, 0.5)).
        Assert.Equal([(5, 2), (6, 6), (0, 0)], proposed.Select(p => (p.Hold, p.Order)));
        Assert.Equal([false, true, false], proposed.Select(p => p.IsWide));
        Assert.All(proposed, p => Assert.InRange(p.ExpectedMissing, 0, 0.2));
    }

    /// <summary>
    /// Common practice, no source: 0.02 mm steps serve better than 0.04. For a spread much wider than the step the distance is
    /// a quarter of the step times the lever ratio (the mean of a uniform over half a step).
    /// </summary>
    [Fact]
    public void Finer_steps_come_nearer_to_set_to_and_last_longer()
    {
        var valves = new[] { Valve(0.05, 0.02, 1, ratio: 1, drift: -0.02), Valve(0.04, 0.02, 1, ratio: 1, drift: -0.03) };

        var fine = StepComparison.For(valves, 0.02m)!;
        var coarse = StepComparison.For(valves, 0.04m)!;

        Assert.Equal(0.005, fine.MeanDistanceMm, 4);
        Assert.Equal(0.010, coarse.MeanDistanceMm, 4);
        Assert.Equal((0.010, 0.020), (Math.Round(fine.LargestDistanceMm, 9), Math.Round(coarse.LargestDistanceMm, 9)));

        // Half a step to the wrong side: 0.04 mm left at 0.02 and 0.03 per 10,000 km, and 0.03 mm left; both valves weigh alike.
        Assert.Equal((0.04 / 0.02 + 0.04 / 0.03) / 2 * 10_000, fine.LeastLifeKm!.Value, 100.0);
        Assert.Equal((0.03 / 0.02 + 0.03 / 0.03) / 2 * 10_000, coarse.LeastLifeKm!.Value, 100.0);
        Assert.Equal(fine.MeanLifeKm!.Value, coarse.MeanLifeKm!.Value, 300.0);
    }

    [Fact]
    public void A_valve_that_is_fitted_exactly_lives_from_set_to_to_the_limit()
    {
        // 0.05 mm from set-to to the lower limit at 0.02 mm per 10,000 km: 25,000 km.
        var outcome = StepComparison.For([Valve(0.05, 0.02, 1, drift: -0.02)], 0.001m)!;

        Assert.Equal(25_000, outcome.MeanLifeKm!.Value, 300.0);
    }

    [Fact]
    public void A_valve_that_hardly_drifts_lives_no_longer_than_anybody_foretells()
    {
        var outcome = StepComparison.For([Valve(0.05, 0.02, 1, drift: -1e-9)], 0.02m)!;

        Assert.Equal(StepComparison.LongestLifeKm, outcome.MeanLifeKm!.Value, 1e-6);
        Assert.Equal(StepComparison.LongestLifeKm, StepComparison.For([Valve(0.05, 0.02, 1, drift: 0)], 0.02m)!.LeastLifeKm!.Value, 1e-6);
    }

    [Fact]
    public void Where_nothing_is_foretold_there_is_nothing_to_compare()
    {
        Assert.Null(StepComparison.For([], 0.02m));
        Assert.Null(StepComparison.For([Valve(0.08, 0.01, 0)], 0.02m));
        Assert.Null(StepComparison.For([Valve(0.08, 0.01, 1)], 0.02m)!.MeanLifeKm);
    }

    [Fact]
    public void The_probability_of_being_outside_is_both_tails()
    {
        // R 4.2.2: pnorm(0.10, 0.11, 0.01) + pnorm(0.20, 0.11, 0.01, lower.tail = FALSE)
        DigitsOfAgreement(0.158655253931457, ValveOutlook.Outside(Valve(0.11, 0.01, 1).Limits, 0.11, 0.01));
        Assert.InRange(ValveOutlook.Outside(Valve(0.15, 0.01, 1).Limits, 0.15, 0.01), 0, 1e-5);
    }

    private static void DigitsOfAgreement(double expected, double computed) =>
        Workshop.Domain.Tests.Statistics.DigitsOfAgreement.AtLeast(11, computed, expected, "outside");

    private static ValveOutlook Valve(
        double clearance, double sd, double needs, decimal ratio = 1, decimal shim = 2.50m, double comes = 1, int motorcycle = 1, double? drift = null) => new(
        new Guid(motorcycle, 0, 0, new byte[8]), ValveKey.Parse("1-intake-1"), Mm(shim),
        new ClearanceLimits(
            Side.Intake, 1, Clearance.FromMillimetres(0.10m), Clearance.FromMillimetres(0.20m), Clearance.FromMillimetres(0.15m), LeverRatio.From(ratio), Source),
        clearance, sd, needs, comes, drift, new ShimRange("S", 9, "disc", Mm(1.60m), Mm(3.20m), 0.02m, Source));

    private static ShimThickness Mm(decimal mm) => ShimThickness.FromMillimetres(mm);
}
