using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

public class PathLikelihoodTests
{
    /// <summary>Dense trapezoid integration in R 4.2.2, see <see cref="PathCases.CaseA"/>.</summary>
    [Fact]
    public void The_log_likelihood_of_the_reference_case_agrees()
    {
        var data = PathCases.CaseA();

        DigitsOfAgreement.AtLeast(
            7, PathCases.LogLikelihood(data, PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.007)), -245.693744304, "given");
        DigitsOfAgreement.AtLeast(8, PathCases.LogLikelihood(data, PathCases.CaseAMaximum), -234.849313156, "maximum");
        DigitsOfAgreement.AtLeast(
            11, PathCases.LogLikelihood(data, PathCases.CaseAMaximum, fine: true), -234.849313156, "maximum, fine");
    }

    /// <summary>Blades of every coarseness, from 1.7 sigma to 17.</summary>
    [Theory]
    [InlineData(0.01, 0)]
    [InlineData(0.05, 0)]
    [InlineData(0.10, 0)]
    [InlineData(0.01, 0.006)]
    [InlineData(0.05, 0.006)]
    public void Brute_force_agrees_whatever_the_step(double step, double cluster)
    {
        var truth = PathCases.Parameters(0.31, 0.02, -0.012, 0.01, 0.006, cluster);
        var groups = PathCases.Simulate(8, step, truth, 11);
        var expected = BruteForce.LogLikelihood(groups, truth);

        DigitsOfAgreement.AtLeast(6.5, PathCases.LogLikelihood(PathCases.Build(groups), truth), expected, "usual");
        DigitsOfAgreement.AtLeast(8.5, PathCases.LogLikelihood(PathCases.Build(groups), truth, fine: true), expected, "fine");
    }

    /// <summary>
    /// With one group a cluster only the sum of own and shared variance matters, so the three nested integrals of one must give
    /// what the two of the other give, also where nearly all the spread is shared.
    /// </summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.7)]
    [InlineData(0.999)]
    [InlineData(0.9999999)]
    [InlineData(1)]
    public void What_a_cluster_of_one_shares_is_part_of_its_own_spread(double share)
    {
        var data = PathCases.CaseA();
        var whole = PathCases.CaseAMaximum;
        var split = whole with
        {
            SlopeDeviation = [whole.SlopeDeviation[0] * Math.Sqrt(1 - (share * share))],
            ClusterDeviation = whole.SlopeDeviation[0] * share,
        };

        Assert.Equal(PathCases.LogLikelihood(data, whole), PathCases.LogLikelihood(data, split), 1e-5);
    }

    /// <summary>Blunders and search steps far off: log units by the thousand, and no infinity.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(3)]
    [InlineData(300)]
    public void Readings_far_from_expectation_keep_a_finite_log_likelihood(double off)
    {
        var data = PathCases.Build([[[(0, 0.30, 0.31), (1, 0.30 + off, 0.31 + off), (2, 0.29, 0.30)]]]);
        var at = PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006);
        var log = PathCases.LogLikelihood(data, at);

        Assert.True(double.IsFinite(log));

        // Were they exact they would be jointly normal about 0.30, 0.29, 0.28; the brackets take log(0.01) off each density.
        var exact = Exact([0.305, 0.305 + off, 0.295], at) + (3 * Math.Log(0.01));
        DigitsOfAgreement.AtLeast(off > 1 ? 1.5 : 1, log, exact, "as if exact");
    }

    [Fact]
    public void Open_ended_readings_are_the_limit_of_wide_ones()
    {
        var at = PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006);
        var open = PathCases.Build([[[(0, double.NegativeInfinity, 0.28), (1, 0.30, 0.31), (2, 0.25, double.PositiveInfinity)]]]);
        var wide = PathCases.Build([[[(0, -5, 0.28), (1, 0.30, 0.31), (2, 0.25, 5)]]]);

        Assert.Equal(PathCases.LogLikelihood(wide, at, fine: true), PathCases.LogLikelihood(open, at, fine: true), 1e-9);
    }

    [Fact]
    public void A_leg_without_readings_and_a_reading_open_at_both_ends_say_nothing()
    {
        var at = PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006);
        var plain = PathCases.Build([[[(0, 0.28, 0.29), (1, 0.30, 0.31)]]]);
        var more = PathCases.Build(
            [[[(0, 0.28, 0.29), (1, 0.30, 0.31), (2, double.NegativeInfinity, double.PositiveInfinity)], []]]);

        Assert.Equal(PathCases.LogLikelihood(plain, at), PathCases.LogLikelihood(more, at), 1e-12);
    }

    private static double Exact(double[] y, PathParameters at)
    {
        var covariance = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(3, 3, (i, j) =>
            Math.Pow(at.LevelDeviation[0], 2) + (i * j * Math.Pow(at.SlopeDeviation[0], 2)) + (i == j ? at.Sigma * at.Sigma : 0));
        var left = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(3, i => y[i] - at.LevelMean[0] - (at.SlopeMean[0] * i));
        return -0.5 * ((3 * Math.Log(2 * Math.PI)) + Math.Log(covariance.Determinant()) + (left * covariance.Inverse() * left));
    }
}
