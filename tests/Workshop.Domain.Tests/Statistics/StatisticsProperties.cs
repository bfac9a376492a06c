using CsCheck;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

/// <summary>What must hold for all data, not only for the published sets.</summary>
public class StatisticsProperties
{
    private const double Tolerance = 1e-8;

    /// <summary>Readings as instruments give them: thousandths, not doubles of every size.</summary>
    private static readonly Gen<double> Value = Gen.Int[-100_000, 100_000].Select(thousandths => thousandths / 1000.0);

    private static readonly Gen<(double X, double Y)[]> Points = Gen.Select(Value, Value).Array[3, 25].Where(points =>
        points.Max(p => p.Item1) - points.Min(p => p.Item1) > 1 && points.Max(p => p.Item2) > points.Min(p => p.Item2));

    private static readonly Gen<double[][]> Groups = Value.Array[1, 8].Array[2, 6].Where(groups => groups.Any(g => g.Length > 1));

    [Fact]
    public void A_line_follows_a_shift_and_a_change_of_scale() =>
        Gen.Select(Points, Value, Value, Gen.Double[0.1, 10], Gen.Double[0.1, 10]).Sample(
            (points, shiftX, shiftY, scaleX, scaleY) =>
            {
                var line = Fit(points);
                var moved = Fit(points.Select(p => ((scaleX * p.X) + shiftX, (scaleY * p.Y) + shiftY)).ToArray());
                var factor = scaleY / scaleX;

                Near(factor * line.Slope.Value, moved.Slope.Value);
                Near(factor * line.Slope.StandardError, moved.Slope.StandardError);
                Near(scaleY * line.ResidualStandardDeviation, moved.ResidualStandardDeviation);
                Near((scaleY * line.Intercept.Value) + shiftY, moved.At(shiftX));
                Near(line.AnalysisOfVariance.RSquared.Value, moved.AnalysisOfVariance.RSquared.Value);
                Near(
                    (scaleY * line.PredictionAt(7, 0.9).Upper) + shiftY,
                    moved.PredictionAt((scaleX * 7) + shiftX, 0.9).Upper);
            });

    [Fact]
    public void The_order_of_the_points_does_not_matter() =>
        Gen.Select(Points, Gen.ULong).Sample((points, seed) =>
        {
            var random = new RandomSource(seed);
            var shuffled = points.OrderBy(_ => random.Bits()).ToArray();

            Near(Fit(points).Slope.Value, Fit(shuffled).Slope.Value);
            Near(Fit(points).Intercept.StandardError, Fit(shuffled).Intercept.StandardError);
            Near(Robust(points).Slope, Robust(shuffled).Slope);
            Near(Robust(points).Upper, Robust(shuffled).Upper);
        });

    [Fact]
    public void Explained_and_residual_sums_make_up_the_total() =>
        Points.Sample(points =>
        {
            var analysis = Fit(points).AnalysisOfVariance;
            var mean = points.Average(p => p.Y);

            Near(
                points.Sum(p => (p.Y - mean) * (p.Y - mean)),
                analysis.Explained.SumOfSquares + analysis.Residual.SumOfSquares);
            Assert.Equal(points.Length - 1, analysis.Explained.DegreesOfFreedom + analysis.Residual.DegreesOfFreedom);
            Assert.True(!analysis.PValue.HasValue || analysis.PValue.Value is >= 0 and <= 1);
        });

    [Fact]
    public void Between_and_within_sums_make_up_the_total_and_follow_shift_and_scale() =>
        Gen.Select(Groups, Gen.Double[-1e6, 1e6], Gen.Double[0.1, 10]).Sample((groups, shift, scale) =>
        {
            var analysis = OneWayAnova.Fit(groups).Value;
            var moved = OneWayAnova.Fit(groups.Select(g => g.Select(v => (scale * v) + shift).ToArray()).ToArray()).Value;
            var all = groups.SelectMany(group => group).ToArray();
            var total = all.Sum(v => (v - all.Average()) * (v - all.Average()));
            var (between, within) = (analysis.AnalysisOfVariance.Explained, analysis.AnalysisOfVariance.Residual);

            Near(total, between.SumOfSquares + within.SumOfSquares);
            Assert.Equal(all.Length - 1, between.DegreesOfFreedom + within.DegreesOfFreedom);
            Near(scale * scale * between.SumOfSquares, moved.AnalysisOfVariance.Explained.SumOfSquares, 1e-5);
            Near(scale * scale * within.SumOfSquares, moved.AnalysisOfVariance.Residual.SumOfSquares, 1e-5);
        });

    /// <summary>Two groups are a line through two x, and F the square of its t.</summary>
    [Fact]
    public void Two_groups_give_the_F_of_a_line_through_them() =>
        Gen.Select(Value.Array[2, 8], Value.Array[2, 8]).Sample((first, second) =>
        {
            var x = first.Select(_ => 0.0).Concat(second.Select(_ => 1.0)).ToArray();

            var asLine = LinearRegression.Fit(x, [.. first, .. second]).Value.AnalysisOfVariance;
            var asGroups = OneWayAnova.Fit([first, second]).Value.AnalysisOfVariance;

            Near(asLine.Explained.SumOfSquares, asGroups.Explained.SumOfSquares, 1e-7);
            Near(asLine.Residual.SumOfSquares, asGroups.Residual.SumOfSquares, 1e-7);
        });

    [Fact]
    public void The_inverse_lies_inside_its_limits_and_leads_back() =>
        Gen.Select(Points, Value, Gen.Double[0.01, 0.99]).Sample((points, y, confidence) =>
        {
            var line = Fit(points);
            var inverse = line.InverseOfMeanResponse(y, confidence);
            if (!inverse.HasValue)
            {
                Assert.Equal(NotComputableReason.SlopeNotDistinguishableFromZero, inverse.WhyNot.Reason);
                Assert.True(line.Slope.Interval(confidence) is { Lower: <= 0, Upper: >= 0 });
                return;
            }

            Near(y, line.At(inverse.Value.Estimate), 1e-6);
            Assert.True(inverse.Value.Lower <= inverse.Value.Estimate && inverse.Value.Estimate <= inverse.Value.Upper);
            Assert.InRange(inverse.Value.G, 0, 1);
        });

    [Fact]
    public void A_robust_line_follows_a_shift_and_a_change_of_scale_and_ignores_an_added_trend() =>
        Gen.Select(Points, Value, Gen.Double[0.1, 10]).Sample((points, trend, scale) =>
        {
            var line = Robust(points);
            var moved = Robust(points.Select(p => (p.X, (scale * p.Y) + (trend * p.X))).ToArray());

            Near((scale * line.Slope) + trend, moved.Slope, 1e-6);
            Near((scale * line.Lower) + trend, moved.Lower, 1e-6);
            Assert.Equal(line.Confidence, moved.Confidence);
            Assert.True(line.Lower <= line.Slope && line.Slope <= line.Upper);
        });

    [Fact]
    public void Rounding_moves_by_half_a_step_at_most_and_lands_on_a_multiple() =>
        Gen.Select(Gen.Int[-1_000_000, 1_000_000], Gen.Int[1, 500]).Sample((thousandths, step) =>
        {
            var value = thousandths / 1000m;
            var range = step / 1000m;
            foreach (var rounded in new[] { Rounding.HalfEvenToMultiple(value, range), Rounding.HalfUpToMultiple(value, range) })
            {
                Assert.Equal(0, rounded % range);
                Assert.True(2 * Math.Abs(rounded - value) <= range);
            }
        });

    private static StraightLine Fit((double X, double Y)[] points) =>
        LinearRegression.Fit(points.Select(p => p.X).ToArray(), points.Select(p => p.Y).ToArray()).Value;

    private static RobustLine Robust((double X, double Y)[] points) =>
        TheilSen.Fit(points.Select(p => p.X).ToArray(), points.Select(p => p.Y).ToArray(), 0.9).Value;

    private static void Near(double expected, double actual, double tolerance = Tolerance) =>
        Assert.Equal(expected, actual, tolerance * Math.Max(1, Math.Abs(expected)));
}
