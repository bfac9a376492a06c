using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

/// <summary>The effect of a known change, such as that of a thicker shim on a clearance.</summary>
public class CovariateTests
{
    /// <summary>NIST/ITL StRD NoInt1 and NoInt2: exact differences are plain regression through the origin.</summary>
    [Theory]
    [InlineData("nist/NoInt1.dat")]
    [InlineData("nist/NoInt2.dat")]
    public void Exact_differences_are_the_certified_regression_through_the_origin(string file)
    {
        var set = NistDataSet.Read(file);
        var (x, y) = (set.Column(1), set.Column(0));
        var zero = new double[x.Length];
        var fit = CensoredRegression.Fit(CensoredSample.OfDifferences(y, y, zero, zero, x)).Value;

        // Maximum likelihood divides the residual squares by n, the certified standard error by n - 1.
        var shrink = Math.Sqrt((x.Length - 1.0) / x.Length);
        DigitsOfAgreement.AtLeast(12, fit.Coefficients[0].Value, set.Certified("B1"), "slope");
        DigitsOfAgreement.AtLeast(9, fit.Coefficients[0].StandardError, shrink * set.Certified("B1", 1), "its standard error");
    }

    [Fact]
    public void Bracketed_differences_of_a_known_ratio_give_it_back_within_their_limits()
    {
        var random = new RandomSource(12);
        var changes = Enumerable.Range(0, 200).Select(_ => random.Uniform(-0.2, 0.2)).ToArray();
        var found = changes.Select(_ => 0.05 * Math.Floor(random.Uniform(0.1, 0.4) / 0.05)).ToArray();
        var left = found.Zip(changes, (f, c) => 0.05 * Math.Floor((f + random.Uniform(0, 0.05) - (0.6 * c)) / 0.05)).ToArray();
        var sample = CensoredSample.OfDifferences(
            found, [.. found.Select(f => f + 0.05)], left, [.. left.Select(l => l + 0.05)], changes);
        var profile = CensoredRegression.Profile(sample, 0, 0.95);

        // Brackets of 0.05 on both sides, and no other error: a line may well pass through all differences.
        if (profile.HasValue)
        {
            Assert.InRange(0.6, profile.Value.Lower - 0.05, profile.Value.Upper + 0.05);
        }
        else
        {
            Assert.Equal(NotComputableReason.BracketsTooCoarse, profile.WhyNot.Reason);
        }
    }

    /// <summary>
    /// Shims are chosen from the reading as found, so its error chooses them too: regression of found less left on the change of
    /// shim comes out too large. In the likelihood of the whole history the choice depends on what was seen only and drops out.
    /// </summary>
    [Fact]
    public void Regression_on_changes_chosen_from_the_first_reading_is_biased_and_the_whole_likelihood_is_not()
    {
        const double Ratio = 0.6;
        var (plain, whole) = (new List<double>(), new List<double>());
        for (var seed = 0; seed < 12; seed++)
        {
            var (history, sample) = Adjusted(300, Ratio, (ulong)seed);
            plain.Add(CensoredRegression.Fit(sample).Value.Coefficients[0].Value);
            whole.Add(-PathCases.Fit(
                history, new() { EstimateCovariate = true, CovariateCoefficient = -0.7, StandardErrors = false }).Value.Parameters.CovariateCoefficient);
        }

        Assert.True(Mean(plain) - Ratio > 5 * Error(plain), $"plain {Mean(plain):F4} +- {Error(plain):F4}");
        Assert.True(Math.Abs(Mean(whole) - Ratio) < 3 * Error(whole), $"whole {Mean(whole):F4} +- {Error(whole):F4}");
    }

    [Fact]
    public void Profile_limits_of_the_coefficient_lie_where_the_likelihood_has_fallen_by_half_of_chi_squared()
    {
        var (history, _) = Adjusted(60, 0.6, 3);
        var options = new PathOptions { CovariateCoefficient = -0.6 };
        var profile = IntervalPaths.ProfileCovariate(history, 0.95, options, TestContext.Current.CancellationToken).Value;
        var fit = PathCases.Fit(history, options with { EstimateCovariate = true }).Value;
        var error = fit.StandardErrors.Value.CovariateCoefficient;

        Assert.InRange(-0.6, profile.Lower, profile.Upper);
        DigitsOfAgreement.AtLeast(1, profile.Upper - profile.Lower, 2 * 1.96 * error, "width");
        foreach (var limit in new[] { profile.Lower, profile.Upper })
        {
            var held = PathCases.Fit(history, new() { CovariateCoefficient = limit, StandardErrors = false }).Value;
            Assert.Equal(3.841459 / 2, fit.LogLikelihood - held.LogLikelihood, 1e-3);
        }
    }

    /// <summary>
    /// Valves read at two visits; at the second those out of limits get a shim that would put the reading right. The true lever
    /// ratio is as given, readings err by 0.015 and the blades go by 0.02. Differences are those of the brackets' middles.
    /// </summary>
    private static (PathData History, CensoredSample Differences) Adjusted(int valves, double ratio, ulong seed)
    {
        const double Step = 0.02;
        var random = new RandomSource(seed);
        var builder = new PathDataBuilder();
        builder.Cluster();
        var (foundLower, leftLower, changes) = (new List<double>(), new List<double>(), new List<double>());
        for (var v = 0; v < valves; v++)
        {
            var (level, slope) = (random.Normal(0.30, 0.02), random.Normal(-0.03, 0.02));
            builder.Group();
            builder.Leg();
            Read(0, Lower(level));
            var found = Lower(level + (2 * slope));
            Read(2, found);
            if (found < 0.25)
            {
                var change = Math.Round((found + (Step / 2) - 0.30) / ratio / 0.025) * 0.025;
                var left = Lower(level + (2 * slope) - (ratio * change));
                Read(2, left, change);
                foundLower.Add(found);
                leftLower.Add(left);
                changes.Add(change);
            }
        }

        // The middles of both readings, as if exact.
        var (found0, left0) = (foundLower.ToArray(), leftLower.ToArray());
        return (builder.Build(), CensoredSample.OfDifferences(found0, found0, left0, left0, [.. changes]));

        double Lower(double clearance) => Step * Math.Floor((clearance + random.Normal(0, 0.015)) / Step);

        void Read(double x, double lower, double covariate = 0) => builder.Reading(x, lower, lower + Step, covariate: covariate);
    }

    private static double Mean(List<double> values) => values.Average();

    private static double Error(List<double> values) =>
        Math.Sqrt(values.Sum(v => Math.Pow(v - values.Average(), 2)) / (values.Count - 1) / values.Count);
}
