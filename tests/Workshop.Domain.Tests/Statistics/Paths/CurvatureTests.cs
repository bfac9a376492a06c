using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

public class CurvatureTests
{
    /// <summary>
    /// The negative control. Cracks of nlme::Fatigue up to 60,000 cycles grow faster and faster; a straight line foretells the
    /// later ones far too late. Exact lengths against lme4 1.1-31, R 4.2.2: <c>lmer(inches ~ x + (1 | Path) + (0 + x | Path),
    /// REML = FALSE)</c> with and without <c>I(x^2)</c>, x in 10,000 cycles: log-likelihoods 450.075428597 and 500.554672911.
    /// </summary>
    [Fact]
    public void Growing_cracks_are_told_from_straight_lines()
    {
        var exact = Cracks(0);
        var straight = PathCases.Fit(exact).Value;
        var test = Test(exact, straight);

        Assert.Equal(450.075428597, straight.LogLikelihood, 1e-4);
        Assert.Equal(100.95848863, test.LikelihoodRatio, 1e-3);
        DigitsOfAgreement.AtLeast(4, test.Coefficient.Value, 0.00159863945578, "curvature");

        // Each length was read to a hundredth of an inch: it lies within half of one of what was written down.
        var read = Cracks(0.01);
        var bracketed = Test(read, PathCases.Fit(read).Value);

        Assert.True(bracketed.PValue < 1e-15, $"{bracketed}");
        Assert.InRange(bracketed.LikelihoodRatio, 80, 130);
    }

    /// <summary>Straight lines are called curved about as often as the level of the test says: 5 of 100 at 0.05.</summary>
    [Fact]
    public void Straight_lines_are_seldom_called_curved()
    {
        var truth = PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006);
        var called = Enumerable.Range(0, 100).Count(seed =>
        {
            var data = PathCases.Build(PathCases.Simulate(30, 0.01, truth, (ulong)(1000 + seed)));
            return Test(data, PathCases.Fit(data, new() { StandardErrors = false }).Value).PValue < 0.05;
        });

        // Binomial: 0 to 12 with probability 0.998.
        Assert.InRange(called, 0, 12);
    }

    [Fact]
    public void Two_distances_a_leg_tell_no_curvature()
    {
        var groups = PathCases.Simulate(30, 0.01, PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006), 6);
        var data = PathCases.Build(groups.Select(g => g.Select(l => l.Where(r => r.X < 2))));
        var test = IntervalPaths.TestCurvature(
            data, PathCases.Fit(data).Value, 0, cancellation: TestContext.Current.CancellationToken);

        Assert.Equal(NotComputableReason.NoFiniteMaximum, test.WhyNot?.Reason);
    }

    private static CurvatureTest Test(PathData data, PathFit straight) =>
        IntervalPaths.TestCurvature(data, straight, 0, cancellation: TestContext.Current.CancellationToken).Value;

    private static PathData Cracks(double step)
    {
        var table = CsvTable.Read("fatigue", CheckValues.Lines("paths/fatigue-inches.csv"));
        var builder = new PathDataBuilder();
        foreach (var path in table.Rows.Where(row => row.Number("cycles") <= 0.06m).GroupBy(row => row["Path"]))
        {
            builder.Cluster();
            builder.Group();
            builder.Leg();
            foreach (var row in path)
            {
                var inches = (double)row.Number("inches");
                builder.Reading((double)row.Number("cycles") * 100, inches - (step / 2), inches + (step / 2));
            }
        }

        return builder.Build();
    }
}
