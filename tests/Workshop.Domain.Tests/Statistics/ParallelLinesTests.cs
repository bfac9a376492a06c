using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

public class ParallelLinesTests
{
    private static readonly Gen<double> Value = Gen.Int[-100_000, 100_000].Select(thousandths => thousandths / 1000.0);

    private static readonly Gen<(double X, double Y, int Group)[]> Points =
        Gen.Select(Value, Value, Gen.Int[1, 4]).Array[3, 25].Where(points =>
            points.Length - points.Select(p => p.Item3).Distinct().Count() >= 2
            && points.GroupBy(p => p.Item3).Any(g => g.Max(p => p.Item1) - g.Min(p => p.Item1) > 1));

    /// <summary>
    /// Belenky et al., J. Sleep Research 12 (2003) 1-12, as data set sleepstudy of R's lme4 1.1-31. The design is balanced, so
    /// <c>lm(Reaction ~ Days + Subject)</c> has the slope and the residual variance of
    /// <c>lmer(Reaction ~ Days + (1 | Subject), REML = TRUE)</c>, R 4.2.2: 10.467285959596 and 960.456581.
    /// </summary>
    [Fact]
    public void One_level_a_subject_agrees_with_R()
    {
        var fit = Sleep();

        DigitsOfAgreement.AtLeast(12, fit.Slope.Value, 10.467285959596, "slope");
        DigitsOfAgreement.AtLeast(8, fit.AnalysisOfVariance.Residual.MeanSquare, 960.456581, "residual variance");
        Assert.Equal(180 - 18 - 1, fit.Slope.DegreesOfFreedom);
    }

    /// <summary>Each subject was seen on days 0 to 9: 18 x 82.5 squared days behind the slope.</summary>
    [Fact]
    public void The_standard_error_is_that_of_the_pooled_squares()
    {
        var fit = Sleep();

        Assert.Equal(18 * 82.5, fit.SquaresX, 1e-9);
        DigitsOfAgreement.AtLeast(8, fit.Slope.StandardError, Math.Sqrt(960.456581 / 1485), "standard error");
    }

    /// <summary>NIST/ITL StRD Norris: with one group the certified line comes out by this road too.</summary>
    [Fact]
    public void One_group_is_the_certified_straight_line()
    {
        var set = NistDataSet.Read("nist/Norris.dat");
        var fit = ParallelLines.Fit(set.Column(1), set.Column(0), new int[36]).Value;
        var line = fit.LineOf(0);

        DigitsOfAgreement.AtLeast(13, fit.Slope.Value, set.Certified("B1"), "slope");
        DigitsOfAgreement.AtLeast(12, fit.Slope.StandardError, set.Certified("B1", 1), "its standard error");
        DigitsOfAgreement.AtLeast(11, line.Intercept.Value, set.Certified("B0"), "intercept");
        DigitsOfAgreement.AtLeast(12, line.Intercept.StandardError, set.Certified("B0", 1), "its standard error");
        DigitsOfAgreement.AtLeast(
            12, fit.AnalysisOfVariance.ResidualStandardDeviation, set.Certified("Standard Deviation"), "residual sd");
    }

    /// <summary>The definition: least squares on x and one dummy column a group, solved by QR.</summary>
    [Fact]
    public void They_are_least_squares_with_a_dummy_column_for_each_group() =>
        Points.Sample(points =>
        {
            var fit = Fit(points).Value;
            var groups = points.Select(p => p.Group).Distinct().Order().ToArray();
            var design = Matrix<double>.Build.Dense(points.Length, groups.Length + 1, (row, column) =>
                column == 0 ? points[row].X : groups[column - 1] == points[row].Group ? 1 : 0);
            var y = Vector<double>.Build.Dense(points.Select(p => p.Y).ToArray());
            var coefficients = design.QR().Solve(y);
            var residual = (y - (design * coefficients)).DotProduct(y - (design * coefficients));
            var freedom = points.Length - groups.Length - 1;
            var inverse = (design.Transpose() * design).Inverse();

            Near(coefficients[0], fit.Slope.Value);
            Near(Math.Sqrt(residual / freedom * inverse[0, 0]), fit.Slope.StandardError);
            Assert.Equal(freedom, fit.Slope.DegreesOfFreedom);
            foreach (var (group, index) in groups.Select((g, i) => (g, i + 1)))
            {
                // The height of a group's line at x = 3, with its variance by the whole covariance matrix.
                var at = Vector<double>.Build.Dense(groups.Length + 1, c => c == 0 ? 3 : c == index ? 1 : 0);
                var height = fit.LineOf(group).MeanResponseAt(3, 0.9);
                Near(coefficients[index] + (3 * coefficients[0]), height.Estimate);
                Near(Math.Sqrt(residual / freedom * (at * inverse * at)), height.StandardError);
            }
        });

    [Fact]
    public void Each_group_may_count_from_its_own_origin() =>
        Gen.Select(Points, Value).Sample((points, shift) =>
        {
            var moved = points.Select(p => p.Group == 2 ? (p.X + shift, p.Y, p.Group) : p).ToArray();

            Near(Fit(points).Value.Slope.Value, Fit(moved).Value.Slope.Value, 1e-6);
            Near(Fit(points).Value.Slope.StandardError, Fit(moved).Value.Slope.StandardError, 1e-6);
        });

    [Fact]
    public void Points_closer_to_the_line_than_they_were_read_prove_no_certainty()
    {
        var fit = ParallelLines.Fit([0, 1, 2], [0.3, 0.2, 0.1], [1, 1, 1], leastResidualVariance: 0.01 * 0.01 / 12).Value;

        Assert.Equal(0.01 / Math.Sqrt(12), fit.AnalysisOfVariance.ResidualStandardDeviation, 1e-15);
        Assert.Equal(0.01 / Math.Sqrt(24), fit.Slope.StandardError, 1e-15);
    }

    [Fact]
    public void One_x_in_each_group_has_no_slope()
    {
        double[] x = [0, 1, 1, 2], y = [1, 2, 3, 4];

        Assert.Equal(NotComputableReason.NoSpreadInX, ParallelLines.Fit(x, y, [1, 2, 2, 3]).WhyNot!.Reason);
        Assert.Equal(NotComputableReason.NoSpreadInX, ParallelLines.CommonSlope(x, y, [1, 2, 2, 3]).WhyNot!.Reason);
    }

    [Fact]
    public void As_many_points_as_coefficients_have_a_slope_without_uncertainty()
    {
        double[] x = [0, 1, 5], y = [1, 3, 7];

        Assert.Equal(NotComputableReason.TooFewPoints, ParallelLines.Fit(x, y, [1, 1, 2]).WhyNot!.Reason);
        Assert.Equal(2, ParallelLines.CommonSlope(x, y, [1, 1, 2]).Value);
    }

    [Fact]
    public void Groups_of_another_number_are_a_fault() =>
        Assert.Throws<ArgumentException>(() => ParallelLines.Fit([0, 1], [0, 1], [1]));

    private static ParallelLines Sleep()
    {
        var table = CsvTable.Read("sleepstudy", CheckValues.Lines("regression/sleepstudy.csv"));
        return ParallelLines.Fit(
            table.Numbers("Days"), table.Numbers("Reaction"), [.. table.Numbers("Subject").Select(s => (int)s)]).Value;
    }

    private static Computed<ParallelLines> Fit((double X, double Y, int Group)[] points) => ParallelLines.Fit(
        points.Select(p => p.X).ToArray(), points.Select(p => p.Y).ToArray(), points.Select(p => p.Group).ToArray());

    private static void Near(double expected, double actual, double tolerance = 1e-7) =>
        Assert.Equal(expected, actual, tolerance * Math.Max(1, Math.Abs(expected)));
}
