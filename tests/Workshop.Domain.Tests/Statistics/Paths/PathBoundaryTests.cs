using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

/// <summary>What lies at the edge gives a result or a named reason, never a number that is none.</summary>
public class PathBoundaryTests
{
    private const double Infinity = double.PositiveInfinity;

    [Fact]
    public void Readings_all_alike_say_that_the_blades_are_too_coarse()
    {
        var fit = PathCases.Fit(PathCases.Build(Enumerable.Range(0, 10).Select(_ =>
            new[] { new[] { (0.0, 0.20, 0.25), (1.0, 0.20, 0.25), (2.0, 0.20, 0.25) } })));

        Assert.Equal(NotComputableReason.BracketsTooCoarse, fit.WhyNot?.Reason);
        Assert.Contains("0.05", fit.WhyNot?.Explanation);
    }

    [Fact]
    public void Exact_readings_on_one_line_leave_no_scatter()
    {
        var fit = PathCases.Fit(PathCases.Build(Enumerable.Range(0, 5).Select(_ =>
            new[] { new[] { (0.0, 0.2, 0.2), (1.0, 0.19, 0.19), (2.0, 0.18, 0.18) } })));

        Assert.Equal(NotComputableReason.NoResidualVariation, fit.WhyNot?.Reason);
    }

    [Fact]
    public void One_reading_and_none_are_too_few()
    {
        Assert.Equal(NotComputableReason.TooFewPoints, PathCases.Fit(new PathDataBuilder().Build()).WhyNot?.Reason);
        Assert.Equal(NotComputableReason.TooFewPoints, PathCases.Fit(PathCases.Build([[[(0, 0.2, 0.21)]]])).WhyNot?.Reason);
    }

    [Fact]
    public void Readings_at_one_distance_have_no_slope()
    {
        var groups = PathCases.Simulate(20, 0.01, PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006), 1);

        Assert.Equal(
            NotComputableReason.NoSpreadInX,
            PathCases.Fit(PathCases.Build(groups.Select(g => g.Select(l => l.Select(r => (0.7, r.Lower, r.Upper)))))).WhyNot?.Reason);
    }

    /// <summary>One valve: its level and slope are the means, and nothing can be told of a spread.</summary>
    [Fact]
    public void One_group_has_no_spread_but_a_line()
    {
        double[] drift = [0, 1, 2, 3, 4, 5];
        double[] wobble = [0.004, -0.006, 0.009, -0.003, -0.007, 0.003];
        var readings = drift.Select((x, i) => (x, Lower: 0.01 * Math.Floor((0.3 - (0.012 * x) + wobble[i]) / 0.01))).ToList();
        var fit = PathCases.Fit(PathCases.Build([[readings.Select(r => (r.x, r.Lower, r.Lower + 0.01))]])).Value;
        var line = CensoredRegression.Fit(CensoredSample.WithConstant(
            [.. readings.Select(r => r.Lower)], [.. readings.Select(r => r.Lower + 0.01)], drift)).Value;

        Assert.Equal([PathRemark.NoLevelSpread, PathRemark.NoSlopeSpread], fit.Remarks);
        Assert.Equal(line.LogLikelihood, fit.LogLikelihood, 1e-5);
        DigitsOfAgreement.AtLeast(3, fit.Parameters.SlopeMean[0], line.Coefficients[1].Value, "slope");
        DigitsOfAgreement.AtLeast(2, fit.StandardErrors.Value.SlopeMean[0], line.Coefficients[1].StandardError, "its error");
        Assert.Equal(0, fit.StandardErrors.Value.SlopeDeviation[0]);
    }

    [Fact]
    public void A_fleet_without_spread_of_slopes_is_remarked_on()
    {
        var groups = PathCases.Simulate(60, 0.01, PathCases.Parameters(0.3, 0.02, -0.01, 0, 0.006), 4);
        var fits = Enumerable.Range(0, 6).Select(seed => PathCases.Fit(PathCases.Build(
            PathCases.Simulate(60, 0.01, PathCases.Parameters(0.3, 0.02, -0.01, 0, 0.006), (ulong)seed))).Value).ToList();

        // A deviation estimated where there is none is 0 about every second time.
        Assert.Contains(fits, fit => fit.Remarks.Contains(PathRemark.NoSlopeSpread));
        Assert.All(fits, fit => Assert.True(fit.Parameters.SlopeDeviation[0] < 0.004));
        Assert.NotEmpty(groups);
    }

    [Fact]
    public void One_reading_a_leg_cannot_tell_levels_from_errors_and_says_so()
    {
        var groups = PathCases.Simulate(40, 0.01, PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006), 2);
        var fit = PathCases.Fit(PathCases.Build(groups.Select(g => g.SelectMany(l => l.Select(r => new[] { r })))));

        Assert.True(fit.HasValue ? fit.Value.LogLikelihood < 0 : fit.WhyNot.Reason == NotComputableReason.NoFiniteMaximum, fit.ToString());
        AllNumbers(fit);
    }

    [Fact]
    public void Readings_open_to_one_side_only_have_no_finite_maximum()
    {
        var groups = PathCases.Simulate(30, 0.01, PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006), 2);
        var fit = PathCases.Fit(PathCases.Build(groups.Select(g => g.Select(l => l.Select(r => (r.X, r.Lower, Infinity))))));

        Assert.False(fit.HasValue);
        Assert.True(fit.WhyNot.Reason is NotComputableReason.NoFiniteMaximum or NotComputableReason.BracketsTooCoarse, fit.WhyNot.ToString());
    }

    [Fact]
    public void A_few_open_readings_among_closed_ones_are_used()
    {
        var truth = PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006);
        var groups = PathCases.Simulate(200, 0.01, truth, 8)
            .Select(g => g.Select(l => l.Select(r => r.Lower < 0.27 ? (r.X, double.NegativeInfinity, 0.27) : r.Lower > 0.33 ? (r.X, 0.33, Infinity) : r)));
        var fit = PathCases.Fit(PathCases.Build(groups)).Value;

        Assert.InRange(fit.Parameters.LevelMean[0], 0.29, 0.31);
        Assert.InRange(fit.Parameters.LevelDeviation[0], 0.016, 0.024);
        Assert.InRange(fit.Parameters.SlopeMean[0], -0.013, -0.007);
    }

    [Fact]
    public void Blades_of_different_steps_fit_together()
    {
        var truth = PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006);
        var groups = PathCases.Simulate(100, 0.01, truth, 8).Concat(PathCases.Simulate(100, 0.05, truth, 9));
        var fit = PathCases.Fit(PathCases.Build(groups)).Value;

        Assert.InRange(fit.Parameters.Sigma, 0.0045, 0.0075);
    }

    [Theory]
    [InlineData(1e6)]
    [InlineData(-1e6)]
    public void Huge_offsets_leave_the_fit_as_it_is(double offset)
    {
        var groups = PathCases.Simulate(40, 0.0625, PathCases.Parameters(2, 0.12, -0.07, 0.06, 0.04), 2);
        var plain = PathCases.Fit(PathCases.Build(groups)).Value;
        var moved = PathCases.Fit(PathCases.Build(groups.Select(g => g.Select(l => l.Select(
            r => (r.X, r.Lower + offset, r.Upper + offset)))))).Value;

        DigitsOfAgreement.AtLeast(7, moved.LogLikelihood, plain.LogLikelihood, "log-likelihood");
        DigitsOfAgreement.AtLeast(4, moved.Parameters.SlopeMean[0], plain.Parameters.SlopeMean[0], "slope");
        Assert.Equal(plain.Parameters.LevelMean[0] + offset, moved.Parameters.LevelMean[0], 1e-4);
    }

    [Fact]
    public void A_wild_reading_does_not_break_the_fit()
    {
        var groups = PathCases.Simulate(40, 0.01, PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006), 2);
        groups[3][1][1] = (1, 3.00, 3.01);
        var fit = PathCases.Fit(PathCases.Build(groups));

        Assert.True(fit.HasValue, fit.ToString());
        AllNumbers(fit);
    }

    [Fact]
    public void Out_of_order_calls_are_a_bug_of_the_caller()
    {
        Assert.Throws<InvalidOperationException>(() => new PathDataBuilder().Group());
        var builder = new PathDataBuilder();
        builder.Cluster();
        Assert.Throws<InvalidOperationException>(() => builder.Leg());
        builder.Group();
        Assert.Throws<InvalidOperationException>(() => builder.Reading(0, 1, 2));
        builder.Leg();
        Assert.Throws<ArgumentException>(() => builder.Reading(0, 2, 1));
        Assert.Throws<ArgumentException>(() => builder.Reading(double.NaN, 1, 2));
        Assert.Throws<ArgumentException>(() => builder.Reading(0, double.NaN, 2));
    }

    private static void AllNumbers(Computed<PathFit> fit)
    {
        if (fit.HasValue)
        {
            var at = fit.Value.Parameters;
            Assert.All(
                at.LevelMean.Concat(at.LevelDeviation).Concat(at.SlopeMean).Concat(at.SlopeDeviation).Append(at.Sigma),
                value => Assert.True(double.IsFinite(value)));
        }
    }
}
