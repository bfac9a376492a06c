using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

public class PathFitTests
{
    private static readonly PathOptions Tight = new() { Precision = 1e-14, Fine = true };

    /// <summary>Maximised over dense grids in R 4.2.2 by Nelder-Mead and BFGS, see <see cref="PathCases.CaseA"/>.</summary>
    [Fact]
    public void The_maximum_of_the_reference_case_agrees()
    {
        var fit = PathCases.Fit(PathCases.CaseA()).Value;

        DigitsOfAgreement.AtLeast(8, fit.LogLikelihood, -234.849313156, "log-likelihood");
        DigitsOfAgreement.AtLeast(3, fit.Parameters.LevelMean[0], 0.3122464042, "mean level");
        DigitsOfAgreement.AtLeast(3, fit.Parameters.LevelDeviation[0], 0.0185241237, "deviation of levels");
        DigitsOfAgreement.AtLeast(3, fit.Parameters.SlopeMean[0], -0.0121338659, "mean slope");
        DigitsOfAgreement.AtLeast(3, fit.Parameters.SlopeDeviation[0], 0.0116632767, "deviation of slopes");
        DigitsOfAgreement.AtLeast(3, fit.Parameters.Sigma, 0.0052896995, "sigma");
        Assert.True(fit.Evaluations <= 12, $"{fit.Evaluations} evaluations");
        Assert.Empty(fit.Remarks);
    }

    /// <summary>Without random effects: <c>survreg(Surv(lo, hi, type = "interval2") ~ x, dist = "gaussian")</c>, survival 3.5-3.</summary>
    [Fact]
    public void Without_spread_it_is_the_regression_of_survreg()
    {
        var fit = PathCases.Fit(PathCases.CaseA(), Tight with { NoSpread = true }).Value;

        DigitsOfAgreement.AtLeast(9, fit.LogLikelihood, -395.785890227, "log-likelihood");
        DigitsOfAgreement.AtLeast(7, fit.Parameters.LevelMean[0], 0.3162462822, "intercept");
        DigitsOfAgreement.AtLeast(7, fit.Parameters.SlopeMean[0], -0.0160413345, "slope");
        DigitsOfAgreement.AtLeast(7, fit.Parameters.Sigma, 0.0416220364, "scale");
    }

    /// <summary>
    /// <c>lmer(Reaction ~ Days + (Days || Subject), sleepstudy, REML = FALSE)</c>, lme4 1.1-31, R 4.2.2, nloptwrap with all
    /// tolerances at 1e-14. Exact readings, and brackets of a thousandth of a millisecond.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.001)]
    public void As_the_step_goes_to_0_it_is_the_mixed_model_of_lmer(double width)
    {
        var fit = PathCases.Fit(PathCases.SleepStudy(width), Tight).Value;
        var errors = fit.StandardErrors.Value;
        var densities = width == 0 ? 0 : 180 * Math.Log(width);

        DigitsOfAgreement.AtLeast(10, fit.LogLikelihood - densities, -876.00162756994, "log-likelihood");
        DigitsOfAgreement.AtLeast(8, fit.Parameters.LevelMean[0], 251.4051048485, "intercept");
        DigitsOfAgreement.AtLeast(8, fit.Parameters.SlopeMean[0], 10.4672859596, "slope");
        DigitsOfAgreement.AtLeast(7, Math.Pow(fit.Parameters.LevelDeviation[0], 2), 584.2500734, "variance of intercepts");
        DigitsOfAgreement.AtLeast(7, Math.Pow(fit.Parameters.SlopeDeviation[0], 2), 33.6331388629, "variance of slopes");
        DigitsOfAgreement.AtLeast(7, Math.Pow(fit.Parameters.Sigma, 2), 653.1160206, "residual variance");

        // lmer's standard errors hold the variances; in a balanced design that makes no difference.
        DigitsOfAgreement.AtLeast(5, errors.LevelMean[0], 6.7076737, "standard error of the intercept");
        DigitsOfAgreement.AtLeast(5, errors.SlopeMean[0], 1.5193144, "standard error of the slope");
    }

    /// <summary>
    /// With its default tolerances lmer stops where the likelihood has its first ten digits and the variances four. There the
    /// log-likelihood is lmer's: <c>logLik</c> -876.0016275723.
    /// </summary>
    [Fact]
    public void Where_lmer_stops_by_default_the_likelihood_is_lmers()
    {
        var stops = PathCases.Parameters(
            251.4051048485, Math.Sqrt(584.2656605477), 10.4672859596, Math.Sqrt(33.6326480892), Math.Sqrt(653.1154205782));

        Assert.Equal(-876.0016275723, PathCases.LogLikelihood(PathCases.SleepStudy(0), stops, fine: true), 1e-8);
    }

    /// <summary>
    /// nlme::Rail (Devore, Probability and Statistics for Engineering and the Sciences, 5th ed. (2000)), <c>travel ~ 1 + (1 |
    /// Rail)</c> by maximum likelihood. A balanced one-way layout: exact in closed form, and lmer agrees.
    /// </summary>
    [Fact]
    public void Levels_alone_agree_with_the_balanced_one_way_layout()
    {
        var table = CsvTable.Read("rail", CheckValues.Lines("paths/rail.csv"));
        var builder = new PathDataBuilder();
        foreach (var rail in table.Rows.GroupBy(row => row["Rail"]))
        {
            builder.Cluster();
            builder.Group();
            builder.Leg();
            foreach (var row in rail)
            {
                builder.Reading(0, (double)row.Number("travel"), (double)row.Number("travel"));
            }
        }

        var fit = PathCases.Fit(builder.Build(), Tight with { NoSlopes = true }).Value;

        DigitsOfAgreement.AtLeast(8, fit.Parameters.LevelMean[0], 66.5, "mean");
        DigitsOfAgreement.AtLeast(6, fit.StandardErrors.Value.LevelMean[0], 9.28484424158778, "its standard error");
        DigitsOfAgreement.AtLeast(6, Math.Pow(fit.Parameters.LevelDeviation[0], 2), 511.861111111111, "between");
        DigitsOfAgreement.AtLeast(6, Math.Pow(fit.Parameters.Sigma, 2), 16.1666666666667, "within");
        DigitsOfAgreement.AtLeast(9, fit.LogLikelihood, -64.2800184692, "log-likelihood");
    }

    /// <summary>The likelihood itself, evaluated near the maximum, is lower in every direction, by half the inverse variance.</summary>
    [Fact]
    public void Standard_errors_are_the_curvature_at_the_maximum()
    {
        var truth = PathCases.Parameters(0.31, 0.02, -0.012, 0.01, 0.006, 0.005);
        var data = PathCases.Build(PathCases.Simulate(100, 0.01, truth, 3));
        var options = new PathOptions { SharedSlopes = true };
        var fit = PathCases.Fit(data, options).Value;
        var at = fit.Parameters;
        var errors = fit.StandardErrors.Value;

        // A profile: with one parameter held one standard error away and the rest at their best the fall is about a half.
        Assert.All(
            new (PathPrior Prior, double Error)[]
            {
                (new(PriorOn.LevelMean, 0, at.LevelMean[0] + errors.LevelMean[0], errors.LevelMean[0] / 30), errors.LevelMean[0]),
                (new(PriorOn.SlopeMean, 0, at.SlopeMean[0] + errors.SlopeMean[0], errors.SlopeMean[0] / 30), errors.SlopeMean[0]),
                (new(PriorOn.LogSlopeDeviation, 0, Math.Log(at.SlopeDeviation[0] + errors.SlopeDeviation[0]), errors.SlopeDeviation[0] / at.SlopeDeviation[0] / 30), errors.SlopeDeviation[0]),
                (new(PriorOn.LogLevelDeviation, 0, Math.Log(at.LevelDeviation[0] + errors.LevelDeviation[0]), errors.LevelDeviation[0] / at.LevelDeviation[0] / 30), errors.LevelDeviation[0]),
                (new(PriorOn.LogClusterDeviation, 0, Math.Log(at.ClusterDeviation + errors.ClusterDeviation), errors.ClusterDeviation / at.ClusterDeviation / 30), errors.ClusterDeviation),
                (new(PriorOn.LogSigma, 0, Math.Log(at.Sigma + errors.Sigma), errors.Sigma / at.Sigma / 30), errors.Sigma),
            },
            held =>
            {
                var there = PathCases.Fit(data, options with { Priors = [held.Prior], StandardErrors = false, Start = at }).Value;
                Assert.InRange(fit.LogLikelihood - there.LogLikelihood, 0.4, 0.6);
                Assert.Contains(PathRemark.Borrowed, there.Remarks);
            });
    }

    [Fact]
    public void A_shared_part_is_found_where_there_is_one_and_is_0_where_there_is_none()
    {
        var with = PathCases.Parameters(0.31, 0.02, -0.012, 0.006, 0.006, 0.008);
        var found = PathCases.Fit(PathCases.Build(PathCases.Simulate(400, 0.01, with, 5)), new() { SharedSlopes = true }).Value;
        var (value, error) = (found.Parameters.ClusterDeviation, found.StandardErrors.Value.ClusterDeviation);

        Assert.InRange(value, 0.008 - (3 * error), 0.008 + (3 * error));
        Assert.InRange(error, 1e-5, 0.002);

        var without = PathCases.Simulate(400, 0.01, PathCases.Parameters(0.31, 0.02, -0.012, 0.006, 0.006), 7);
        var none = PathCases.Fit(PathCases.Build(without), new() { SharedSlopes = true }).Value;

        Assert.True(none.Parameters.ClusterDeviation < 0.002);
        Assert.True(none.LogLikelihood >= PathCases.Fit(PathCases.Build(without)).Value.LogLikelihood - 1e-4);
    }

    [Fact]
    public void Two_classes_share_one_sigma_and_differ_in_the_rest()
    {
        var builder = new PathDataBuilder();
        var cases = new[]
        {
            PathCases.Simulate(300, 0.01, PathCases.Parameters(0.15, 0.01, -0.004, 0.003, 0.006), 21),
            PathCases.Simulate(300, 0.01, PathCases.Parameters(0.25, 0.02, -0.015, 0.008, 0.006), 22),
        };
        for (var side = 0; side < 2; side++)
        {
            foreach (var group in cases[side])
            {
                builder.Cluster();
                builder.Group(side);
                foreach (var leg in group)
                {
                    builder.Leg(side, target: 0.1);
                    leg.ForEach(reading => builder.Reading(reading.X, reading.Lower, reading.Upper));
                }
            }
        }

        var fit = PathCases.Fit(builder.Build()).Value;
        var error = fit.StandardErrors.Value;

        Near([0.05, 0.15], fit.Parameters.LevelMean, error.LevelMean);
        Near([0.01, 0.02], fit.Parameters.LevelDeviation, error.LevelDeviation);
        Near([-0.004, -0.015], fit.Parameters.SlopeMean, error.SlopeMean);
        Near([0.003, 0.008], fit.Parameters.SlopeDeviation, error.SlopeDeviation);
        Near([0.006], [fit.Parameters.Sigma], [error.Sigma]);
    }

    private static void Near(double[] truth, IReadOnlyList<double> estimate, IReadOnlyList<double> error) =>
        Assert.All(truth, (value, i) => Assert.InRange(estimate[i], value - (4 * error[i]), value + (4 * error[i])));
}
