using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

/// <summary>What cannot be computed has a name and a sentence; NaN never leaves this namespace.</summary>
public class DegenerateInputTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Too_few_points_for_a_line_are_named(int count)
    {
        var fit = LinearRegression.Fit(new double[] { 1, 2 }.AsSpan(0, count), new double[] { 3, 4 }.AsSpan(0, count));

        Assert.Equal(NotComputableReason.TooFewPoints, fit.WhyNot?.Reason);
        Assert.Contains($" {count}.", fit.WhyNot?.Explanation);
        Assert.Equal(NotComputableReason.TooFewPoints, TheilSen.Fit([1, 2], [3, 4], 0.9).WhyNot?.Reason);
        Assert.Equal(NotComputableReason.TooFewPoints, ThroughOrigin.Fit([1], [3]).WhyNot?.Reason);
        Assert.Equal(NotComputableReason.TooFewPoints, UnivariateSummary.Of([3]).WhyNot?.Reason);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(0.1)]
    [InlineData(-123456.789)]
    public void Equal_x_are_named_even_where_their_mean_rounds(double x)
    {
        var xs = Enumerable.Repeat(x, 7).ToArray();
        double[] ys = [1, 2, 3, 4, 5, 6, 7];

        Assert.Equal(NotComputableReason.NoSpreadInX, LinearRegression.Fit(xs, ys).WhyNot?.Reason);
        Assert.Equal(NotComputableReason.NoSpreadInX, TheilSen.Fit(xs, ys, 0.9).WhyNot?.Reason);
    }

    [Fact]
    public void X_that_are_all_zero_are_named_by_the_line_through_the_origin() =>
        Assert.Equal(NotComputableReason.NoSpreadInX, ThroughOrigin.Fit([0, 0], [1, 2]).WhyNot?.Reason);

    [Theory]
    [InlineData(0.3)]
    [InlineData(0)]
    public void Equal_y_give_a_level_line_without_F_or_R_squared(double y)
    {
        var line = LinearRegression.Fit([1, 2, 4, 7], [y, y, y, y]).Value;

        Assert.Equal(0, line.Slope.Value);
        Assert.Equal(0, line.Slope.StandardError);
        Assert.Equal(y, line.Intercept.Value, 1e-15);
        Assert.Equal(NotComputableReason.NoSpreadInY, line.AnalysisOfVariance.RSquared.WhyNot?.Reason);
        Assert.Equal(NotComputableReason.NoResidualVariation, line.AnalysisOfVariance.F.WhyNot?.Reason);
        Assert.Equal(NotComputableReason.NoResidualVariation, line.AnalysisOfVariance.PValue.WhyNot?.Reason);
        Assert.Equal(NotComputableReason.SlopeNotDistinguishableFromZero, line.InverseOfMeanResponse(1, 0.9).WhyNot?.Reason);
    }

    [Fact]
    public void Points_exactly_on_a_line_leave_no_F_but_an_exact_inverse()
    {
        var line = LinearRegression.Fit([0, 1, 2], [1, 3, 5]).Value;

        Assert.Equal(1, line.AnalysisOfVariance.RSquared.Value);
        Assert.Equal(NotComputableReason.NoResidualVariation, line.AnalysisOfVariance.F.WhyNot?.Reason);
        var inverse = line.InverseOfMeanResponse(9, 0.99).Value;
        Assert.Equal((4, 4, 4), (inverse.Lower, inverse.Estimate, inverse.Upper));
    }

    [Fact]
    public void Equal_values_have_a_mean_but_no_autocorrelation()
    {
        var summary = UnivariateSummary.Of([0.1, 0.1, 0.1]).Value;

        Assert.Equal(0.1, summary.Mean.Value);
        Assert.Equal(0, summary.StandardDeviation);
        Assert.Equal(NotComputableReason.NoSpreadInY, summary.Lag1Autocorrelation.WhyNot?.Reason);
    }

    [Fact]
    public void Groups_without_a_second_value_are_named()
    {
        Assert.Equal(NotComputableReason.TooFewPoints, OneWayAnova.Fit([[1], [2], [3]]).WhyNot?.Reason);
        Assert.Equal(NotComputableReason.TooFewPoints, OneWayAnova.Fit([[1, 2, 3]]).WhyNot?.Reason);
        Assert.Equal(NotComputableReason.TooFewPoints, OneWayAnova.Fit([]).WhyNot?.Reason);
    }

    [Fact]
    public void Equal_groups_without_scatter_have_zero_components_and_no_F()
    {
        var analysis = OneWayAnova.Fit([[0.1, 0.1], [0.1, 0.1, 0.1]]).Value;

        Assert.Equal((0, 0), (analysis.BetweenVariance.Value, analysis.WithinVariance.Value));
        Assert.Equal(NotComputableReason.NoResidualVariation, analysis.AnalysisOfVariance.F.WhyNot?.Reason);
        Assert.Equal(NotComputableReason.NoSpreadInY, analysis.AnalysisOfVariance.RSquared.WhyNot?.Reason);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e101)]
    public void A_value_that_is_no_number_is_a_bug_of_the_caller(double bad)
    {
        Assert.Throws<ArgumentException>(() => LinearRegression.Fit([1, bad, 3], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => LinearRegression.Fit([1, 2, 3], [1, bad, 3]));
        Assert.Throws<ArgumentException>(() => ThroughOrigin.Fit([1, 2, 3], [1, bad, 3]));
        Assert.Throws<ArgumentException>(() => TheilSen.Fit([1, 2, 3], [1, bad, 3], 0.9));
        Assert.Throws<ArgumentException>(() => UnivariateSummary.Of([1, bad]));
        Assert.Throws<ArgumentException>(() => OneWayAnova.Fit([[1, bad], [1, 2]]));
    }

    [Fact]
    public void Arguments_that_do_not_fit_together_are_a_bug_of_the_caller()
    {
        var line = LinearRegression.Fit([1, 2, 3], [1, 2, 4]).Value;

        Assert.Throws<ArgumentException>(() => LinearRegression.Fit([1, 2, 3], [1, 2]));
        Assert.Throws<ArgumentException>(() => OneWayAnova.Fit([[1, 2], []]));
        Assert.Throws<ArgumentOutOfRangeException>(() => line.PredictionAt(1, 1.0));
        Assert.Throws<ArgumentOutOfRangeException>(() => line.PredictionAt(1, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => line.PredictionAt(1, 0.9, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => line.InverseOfObservation(1, 0.9, 0));
        Assert.Throws<ArgumentException>(() => line.MeanResponseAt(double.NaN, 0.9));
    }
}
