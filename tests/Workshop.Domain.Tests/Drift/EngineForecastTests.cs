using CsCheck;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Drift;

/// <summary>What one engine's valves will do, given parameters that are true.</summary>
public class EngineForecastTests
{
    private static readonly MadeUpFleet Fleet = new() { Engines = 6, VisitsKm = [12_000, 24_000, 36_000], Unmeasured = 0.3 };

    private static readonly DriftFit Known = KnownFit.Of(MadeUpFleet.Usual);

    [Fact]
    public void Any_valve_outside_is_at_least_as_likely_as_each_and_at_most_as_their_sum()
    {
        foreach (var (engine, forecast) in Forecasts(Fleet, Known))
        {
            foreach (var km in new[] { 36_000, 45_000, 60_000, 90_000, 150_000 })
            {
                var each = engine.Lobes.Select(l => forecast.OutsideBy(l.Lobe, Km(km))!.Value).ToList();
                var any = forecast.AnyOutsideBy(Km(km))!.Value;
                Assert.InRange(any, each.Max() - 1e-6, each.Sum() + 1e-6);
            }
        }
    }

    /// <summary>
    /// Nothing shared: the valves leave independently. Shared: where all leave by their lower limits they leave together, so
    /// that the chance that some valve has left is less than independence would make it.
    /// </summary>
    [Fact]
    public void Without_a_shared_part_valves_leave_independently_and_with_one_together()
    {
        var alone = KnownFit.Of(MadeUpFleet.Usual with { BetweenEngines = 0 });
        var shared = KnownFit.Of(MadeUpFleet.Usual with { BetweenEngines = 0.008, BetweenValves = 0.002 });
        var apart = 0.0;
        foreach (var engine in Fleet.Rows().Select(e => e with { Specification = LowerLimitsOnly }))
        {
            foreach (var km in new[] { 38_000, 44_000, 60_000 })
            {
                var independent = EngineForecast.Of(engine, alone);
                Assert.Equal(1 - None(independent, engine, km), independent.AnyOutsideBy(Km(km))!.Value, 1e-9);
                var together = EngineForecast.Of(engine, shared);
                Assert.True(together.AnyOutsideBy(Km(km)) <= 1 - None(together, engine, km) + 1e-6);
                apart = Math.Max(apart, 1 - None(together, engine, km) - together.AnyOutsideBy(Km(km))!.Value);
            }
        }

        Assert.True(apart > 0.01);

        static double None(EngineForecast forecast, DriftEngine engine, int km) =>
            engine.Lobes.Aggregate(1.0, (none, l) => none * (1 - forecast.OutsideBy(l.Lobe, Km(km))!.Value));
    }

    [Fact]
    public void Probabilities_never_fall_with_distance()
    {
        foreach (var (engine, forecast) in Forecasts(Fleet, Known))
        {
            var (last, lastAny) = (engine.Lobes.ToDictionary(l => l.Lobe, _ => 0.0), 0.0);
            for (var km = 0; km <= 400_000; km += 8_000)
            {
                foreach (var lobe in engine.Lobes.Select(l => l.Lobe))
                {
                    var here = forecast.OutsideBy(lobe, Km(km))!.Value;
                    Assert.True(here >= last[lobe] - 1e-6, $"{lobe} at {km}: {last[lobe]} then {here}");
                    last[lobe] = here;
                }

                var any = forecast.AnyOutsideBy(Km(km))!.Value;
                Assert.True(any >= lastAny - 1e-6);
                lastAny = any;
            }
        }
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.05)]
    [InlineData(0.5)]
    [InlineData(0.95)]
    public void A_threshold_is_passed_where_leaving_the_limits_from_the_last_check_on_is_as_likely(double threshold)
    {
        var from = Km(36_000);
        var later = 0;
        foreach (var (engine, forecast) in Forecasts(Fleet, Known))
        {
            var passes = forecast.AnyPasses(threshold)!.Value;
            Assert.True(passes >= from);
            if (passes > from && !engine.Lobes.Any(l => forecast.OutsideBy(l.Lobe, passes) > Math.Max(threshold, 0.5) - 1e-4))
            {
                later++;
                Assert.True(LeavesBy(passes) < threshold + 1e-4, $"{LeavesBy(passes)} at {passes}");
                Assert.True(LeavesBy(passes + Distance.FromKilometres(2)) >= threshold - 1e-4);
            }

            double LeavesBy(Distance at) => 1 - ((1 - forecast.AnyOutsideBy(at)!.Value) / (1 - forecast.AnyOutsideBy(from)!.Value));
        }

        Assert.True(later > 0);
    }

    /// <summary>
    /// Lobes of one engine last read at different visits, some of them outside, some at their limit: an engine is never better than its
    /// worst valve, and a lower threshold is never passed later.
    /// </summary>
    [Fact]
    public void An_engine_never_passes_even_odds_later_than_one_of_its_valves() => Gen.Select(
        Gen.Select(Gen.Int[-3, 12], Gen.Int[1, 3]).Array[4], Gen.Double[0.01, 0.99], Gen.Double[0.01, 0.99]).Sample(
        (lobes, one, other) =>
        {
            var rows = new EngineRows();
            foreach (var (km, visit) in new[] { (12_000, 1), (24_000, 2), (48_000, 3) })
            {
                rows.At(km);
                foreach (var (lobe, (blades, last)) in ReadingRules.LobesOf(MadeUpFleet.OneCylinder).Zip(lobes).Where(l => visit <= l.Second.Item2))
                {
                    var lower = ReadingRules.LimitsOf(MadeUpFleet.OneCylinder, lobe).Lower.Millimetres + (0.01m * (blades + last - visit));
                    rows.Found(lobe, lower, lower + 0.01m);
                }
            }

            var engine = rows.Engine(MadeUpFleet.OneCylinder);
            var forecast = EngineForecast.Of(engine, Known);
            var found = engine.Lobes.Select(l => forecast.Find(l.Lobe)!).ToList();
            var even = forecast.AnyPasses(0.5);
            Assert.All(found, f => Assert.True(f.Even is null || even <= f.Even, $"{f.Lobe.Spoken} at {f.Even}, the engine at {even}"));
            Assert.All(found, f => Assert.True(f.Latest is null || forecast.AnyPasses(0.9) <= f.Latest));
            Assert.True(even is null || even >= found.Min(f => f.From));
            var (low, high) = (forecast.AnyPasses(Math.Min(one, other)), forecast.AnyPasses(Math.Max(one, other)));
            Assert.True(high is null || low <= high, $"{low}, then {high}");
            Assert.All(engine.Lobes, l => Assert.True(
                LeftOutside.LastRead(l, engine.LimitsOf(l.Lobe)) is null || even <= forecast.Find(l.Lobe)!.From));
        },
        iter: 60);

    [Fact]
    public void The_three_leaving_distances_are_in_order_and_where_the_probability_says()
    {
        foreach (var (engine, forecast) in Forecasts(Fleet, Known))
        {
            foreach (var lobe in engine.Lobes.Select(l => forecast.Find(l.Lobe)!))
            {
                Assert.True(lobe.Earliest >= lobe.From && lobe.Earliest <= lobe.Even);
                Assert.True(lobe.Latest is null || lobe.Even <= lobe.Latest);
                foreach (var (at, p) in new[] { (lobe.Earliest, 0.1), (lobe.Even, 0.5), (lobe.Latest, 0.9) })
                {
                    if (at is null)
                    {
                        Assert.True(forecast.OutsideBy(lobe.Lobe, lobe.From + EngineForecast.Reach) < p);
                    }
                    else if (at > lobe.From)
                    {
                        Assert.Equal(p, forecast.OutsideBy(lobe.Lobe, at.Value)!.Value, 1e-3);
                    }
                }
            }
        }
    }

    [Fact]
    public void What_is_not_reached_within_reach_is_absent()
    {
        var still = KnownFit.Of(new DriftParameters(0, 0, 0, 0.00001, 0.01, 0.008, 0.006));
        var rows = new EngineRows();
        foreach (var km in new[] { 12_000, 24_000, 36_000 })
        {
            rows.At(km);
            foreach (var lobe in ReadingRules.LobesOf(MadeUpFleet.OneCylinder))
            {
                var aim = ReadingRules.LimitsOf(MadeUpFleet.OneCylinder, lobe).SetTo.Millimetres;
                rows.Found(lobe, aim - 0.005m, aim + 0.005m);
            }
        }

        var engine = rows.Engine(MadeUpFleet.OneCylinder);
        var forecast = EngineForecast.Of(engine, still);

        Assert.All(engine.Lobes, l =>
        {
            var found = forecast.Find(l.Lobe)!;
            Assert.Equal((null, null, null), (found.Earliest, found.Even, found.Latest));
        });
        Assert.Null(forecast.AnyPasses(0.05));
    }

    [Fact]
    public void A_fan_is_ordered_and_agrees_with_the_probability_of_leaving()
    {
        var (engine, forecast) = Forecasts(Fleet, Known)[0];
        foreach (var lobe in engine.Lobes.Select(l => l.Lobe))
        {
            var fan = forecast.Fan(lobe, [Km(12_000), Km(36_000), Km(60_000), Km(120_000)]);
            Assert.All(fan, point => Assert.Equal(point.Mm.Order(), point.Mm));
            Assert.True(fan[^1].Mm[^1] - fan[^1].Mm[0] > fan[1].Mm[^1] - fan[1].Mm[0]);

            // With the lower limit at the 5 % quantile so much has left by then, with what was outside before and came back.
            var moved = EngineForecast.Of(engine with { Specification = WithLower(lobe, fan[2].Mm[0]) }, Known);
            Assert.InRange(
                moved.OutsideBy(lobe, Km(60_000))!.Value, 0.049, 0.051 + moved.OutsideBy(lobe, Km(36_000))!.Value);
        }
    }

    /// <summary>
    /// 50 % distances of many made-up lobes: about half have left there by the truth. Bound: 4.5 standard errors of a count of
    /// half, lobes of one engine being correlated counted as 3 times the variance.
    /// </summary>
    [Fact]
    public void About_half_of_the_lobes_have_left_at_their_even_distance()
    {
        var fleet = new MadeUpFleet { Engines = 60, VisitsKm = [12_000, 24_000, 48_000], Unmeasured = 0.3, Seed = 12 };
        var (left, counted) = (0, 0);
        foreach (var made in fleet.Make())
        {
            var engine = made.Rows.Engine(fleet.Specification);
            var forecast = EngineForecast.Of(engine, Known);
            foreach (var lobe in engine.Lobes.Select(l => l.Lobe))
            {
                if (forecast.Find(lobe) is { Even: { } even } found && even > found.From)
                {
                    var limits = ReadingRules.LimitsOf(fleet.Specification, lobe);
                    var (then, there) = (made.Truth.ClearanceAt(lobe, found.From), made.Truth.ClearanceAt(lobe, even));
                    counted++;
                    left += new[] { then, there }.Any(
                        mm => mm < (double)limits.Lower.Millimetres || mm > (double)limits.Upper.Millimetres) ? 1 : 0;
                }
            }
        }

        Assert.True(counted > 600, $"{counted}");
        Assert.Equal(0.5, (double)left / counted, 4.5 * Math.Sqrt(3 * 0.25 / counted));
    }

    /// <summary>
    /// An engine never opened, of which the model alone tells, beside made-up engines counted one by one: the whole of the
    /// model, what valves of an engine share included. Bound: 4.5 standard errors of the count.
    /// </summary>
    [Theory]
    [InlineData(20_000)]
    [InlineData(45_000)]
    [InlineData(80_000)]
    public void An_engine_never_measured_leaves_as_often_as_made_up_ones_do(int km)
    {
        const int Engines = 3_000;
        var truth = MadeUpFleet.Usual with { BetweenEngines = 0.008 };
        var specification = MadeUpFleet.OneCylinder;
        var forecast = EngineForecast.Of(new EngineRows().Engine(specification, doneNowKm: 5_000), KnownFit.Of(truth));
        var left = Enumerable.Range(0, Engines).Count(seed =>
        {
            var engine = ClearanceSimulation.OfNewEngine(specification, truth, new RandomSource((ulong)seed));
            return ReadingRules.LobesOf(specification).Any(lobe => Outside(lobe, 0) || Outside(lobe, km));

            bool Outside(LobeKey lobe, int at)
            {
                var limits = ReadingRules.LimitsOf(specification, lobe);
                var clearance = engine.ClearanceAt(lobe, Km(at));
                return clearance < (double)limits.Lower.Millimetres || clearance > (double)limits.Upper.Millimetres;
            }
        });

        var p = forecast.AnyOutsideBy(Km(km))!.Value;
        Assert.Equal(p, (double)left / Engines, 4.5 * Math.Sqrt(p * (1 - p) / Engines));
    }

    private static EngineSpecification LowerLimitsOnly { get; } = Fleet.Specification with
    {
        Limits = [.. Fleet.Specification.Limits.Select(l => l with { Upper = Clearance.FromMillimetres(3) })],
    };

    private static EngineSpecification WithLower(LobeKey lobe, double mm) => Fleet.Specification with
    {
        Limits = [.. Fleet.Specification.Limits.Select(l => l.Side == lobe.Valve.Side
            ? l with { Lower = Clearance.FromMillimetres(Math.Max(0, decimal.Round((decimal)mm, 4))), Upper = Clearance.FromMillimetres(3) }
            : l)],
    };

    private static List<(DriftEngine Engine, EngineForecast Forecast)> Forecasts(MadeUpFleet fleet, DriftFit fit) =>
        [.. fleet.Rows().Select(engine => (engine, EngineForecast.Of(engine, fit)))];

    private static Distance Km(decimal km) => Distance.FromKilometres(km);
}
