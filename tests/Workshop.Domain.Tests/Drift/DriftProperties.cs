using CsCheck;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Drift;

/// <summary>What must hold for every history, not only for the ones thought of.</summary>
public class DriftProperties
{
    /// <summary>A visit: kilometres since the one before, the go blade in hundredths of a mm, blade steps to the no-go.</summary>
    private static readonly Gen<(int Km, int Go, int Width)[]> Visits =
        Gen.Select(Gen.Int[4_000, 40_000], Gen.Int[80, 160], Gen.Int[1, 5]).Array[3, 10];

    /// <summary>
    /// The swap happens after the visit's as found reading; from then on every blade reads lower by ratio x added shim. Drift,
    /// its uncertainty and y* are those of the engine whose shim stayed in.
    /// </summary>
    [Fact]
    public void Drift_is_unchanged_by_a_shim_swap() =>
        Gen.Select(Visits, Gen.Int[0, 9], Gen.Int[-20, 20]).Sample((visits, swapAt, twentieths) =>
        {
            var added = twentieths * 0.05m;
            var kept = Write(visits, _ => 0);
            var swapped = Write(visits, visit => visit > swapAt ? added : 0, swapAt, added);

            Same(kept.Estimate(0, 3), swapped.Estimate(0, 3), -0.6 * (double)(swapAt < visits.Length ? added : 0));
            Assert.Equal(
                kept.Legs().Legs.Single().Readings.Select(r => (r.LowerMm, r.UpperMm, r.X)),
                swapped.Legs().Legs.Single().Readings.Select(r => (r.LowerMm, r.UpperMm, r.X)));
        });

    [Fact]
    public void Drift_is_unchanged_by_the_distance_at_which_it_was_first_read() =>
        Gen.Select(Visits, Gen.Int[0, 200_000]).Sample((visits, shift) =>
        {
            var here = Write(visits, _ => 0).Estimate();
            var there = Write([(visits[0].Km + shift, visits[0].Go, visits[0].Width), .. visits[1..]], _ => 0).Estimate();

            Same(here, there);
            Assert.Equal(here.Reaches is null, there.Reaches is null);
            if (here.Reaches is { } reaches)
            {
                Assert.Equal(reaches.At.Kilometres + shift, there.Reaches!.At.Kilometres, 2);
                Assert.Equal(reaches.Earliest.Kilometres + shift, there.Reaches.Earliest.Kilometres, 2);
            }
        });

    [Fact]
    public void The_order_in_which_rows_were_written_does_not_matter() =>
        Gen.Select(Visits, Gen.ULong, Gen.Int[0, 9]).Sample((visits, seed, swapAt) =>
        {
            var rows = Write(visits, visit => visit > swapAt ? 0.1m : 0, swapAt, 0.1m);

            Assert.Equal(Figures(rows.Estimate()), Figures(rows.Estimate(shuffledBy: seed)));
        });

    /// <summary>Cutting the leg where the shim was known anyway costs a level; the estimate stays one of the same drift.</summary>
    [Fact]
    public void Every_estimate_is_finite_or_has_a_reason() =>
        Gen.Select(Visits, Gen.Int[0, 9].Array[0, 3], Gen.Int[0, 9]).Sample((visits, cuts, openAt) =>
        {
            var rows = new LobeRows();
            var km = 0;
            for (var visit = 0; visit < visits.Length; visit++)
            {
                var (further, go, width) = visits[visit];
                rows.At(km += further).Found(go / 100m, visit == openAt ? null : (go + width) / 100m);
                if (cuts.Contains(visit))
                {
                    rows.Happened(ValveEventKind.ChangeUnknown);
                }
            }

            var estimate = rows.Estimate();

            Assert.True(estimate.Reason is null != estimate.Reaches is null);
            Assert.All(
                new[] { estimate.PresentMm, estimate.DriftMm, estimate.Drift?.StandardError, estimate.Present?.Lower },
                figure => Assert.True(figure is null || double.IsFinite(figure.Value)));
            if (estimate.Reaches is { } reaches)
            {
                Assert.True(reaches.Earliest <= reaches.At && reaches.At <= reaches.Latest);
                Assert.True(reaches.Earliest >= estimate.LastReadingAt || reaches.At <= estimate.LastReadingAt);
            }
        });

    /// <summary>
    /// The claim that Fieller's limits are exact with several levels too: of simulated valves with three legs, 95 % have the
    /// true distance inside. Two standard errors of the count either side, over a seed that is fixed.
    /// </summary>
    [Fact]
    public void Nineteen_intervals_of_twenty_hold_the_true_distance_with_several_levels()
    {
        const int Valves = 4000;
        var random = new RandomSource(20260302);
        double[] x = [0, 2, 4, 0, 2, 4, 0, 2, 4];
        int[] leg = [1, 1, 1, 2, 2, 2, 3, 3, 3];
        double[] level = [0.30, 0.26, 0.28];
        const double Slope = -0.02;
        const double Sigma = 0.006;
        var trueX = (0.10 - level[2]) / Slope;

        var inside = 0;
        for (var valve = 0; valve < Valves; valve++)
        {
            var y = x.Select((at, i) => level[leg[i] - 1] + (Slope * at) + random.Normal(0, Sigma)).ToArray();
            var reached = ParallelLines.Fit(x, y, leg).Value.LineOf(3).InverseOfMeanResponse(0.10, 0.95);
            inside += reached.HasValue && reached.Value.Lower <= trueX && trueX <= reached.Value.Upper ? 1 : 0;
        }

        Assert.Equal(0.95, (double)inside / Valves, 2 * Math.Sqrt(0.95 * 0.05 / Valves));
    }

    private static LobeRows Write(
        (int Km, int Go, int Width)[] visits, Func<int, decimal> addedAt, int swapAt = -1, decimal added = 0)
    {
        var rows = new LobeRows();
        var km = 0;
        for (var visit = 0; visit < visits.Length; visit++)
        {
            var (further, go, width) = visits[visit];
            var taken = 0.6m * addedAt(visit);
            rows.At(km += further).Found((go / 100m) - taken, ((go + width) / 100m) - taken);
            if (visit == swapAt)
            {
                rows.CameOut(3m).WentIn(3m + added);
            }
        }

        return rows;
    }

    private static void Same(StraightLineDrift one, StraightLineDrift other, double presentShift = 0)
    {
        Near(one.DriftMm, other.DriftMm);
        Near(one.Drift?.StandardError, other.Drift?.StandardError);
        Near(one.PresentMm + presentShift, other.PresentMm);
        Near(one.Present?.Upper + presentShift, other.Present?.Upper);
        Assert.Equal(one.Readings, other.Readings);
    }

    private static (double?, double?, double?, Distance?, NoForecastReason?) Figures(StraightLineDrift estimate) => (
        estimate.DriftMm, estimate.Drift?.StandardError, estimate.PresentMm, estimate.Reaches?.At, estimate.Reason);

    private static void Near(double? expected, double? actual)
    {
        Assert.Equal(expected is null, actual is null);
        Assert.Equal(expected ?? 0, actual ?? 0, 1e-9);
    }
}
