using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

/// <summary>What a fit itself leaves open, carried into what is said of each group.</summary>
public class PlausibleTests
{
    private static readonly PathParameters Truth = PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006);

    [Fact]
    public void A_fleet_that_tells_its_parameters_needs_only_the_estimates()
    {
        var fit = PathCases.Fit(PathCases.Build(PathCases.Simulate(1500, 0.01, Truth, 3))).Value;

        var only = Assert.Single(fit.Plausible);
        Assert.Equal(1, only.Weight);
        Assert.Equal(fit.Parameters.Sigma, only.Parameters.Sigma);
    }

    /// <summary>
    /// With one reading each, all between x = 2 and 4, a mean level higher goes with a mean slope steeper; the points to either
    /// side of the estimates spread as the standard errors say.
    /// </summary>
    [Fact]
    public void A_fleet_seen_once_is_looked_at_from_several_parameters()
    {
        var fit = PathCases.Fit(SeenOnce()).Value;
        var slopes = fit.Plausible.Select(p => (p.Weight, Value: p.Parameters.SlopeMean[0])).ToList();
        var mean = slopes.Sum(s => s.Weight * s.Value);
        var deviation = Math.Sqrt(slopes.Sum(s => s.Weight * Math.Pow(s.Value - mean, 2)));

        Assert.InRange(fit.Plausible.Count, 3, 5);
        Assert.Equal(1, fit.Plausible.Sum(p => p.Weight), 1e-12);
        Assert.Equal(fit.Parameters.SlopeMean[0], mean, 1e-9);
        Assert.InRange(deviation / fit.StandardErrors.Value.SlopeMean[0], 0.8, 1.05);
        var higher = fit.Plausible.MaxBy(p => p.Parameters.LevelMean[0])!;
        Assert.True(higher.Parameters.SlopeMean[0] < fit.Parameters.SlopeMean[0]);
        Assert.All(fit.Plausible, p => Assert.True(p.Parameters.LevelDeviation[0] > 0 && p.Parameters.Sigma > 0));
    }

    [Fact]
    public void What_the_fit_leaves_open_widens_what_is_said_of_a_group()
    {
        var data = SeenOnce();
        var fit = PathCases.Fit(data).Value;
        var with = IntervalPaths.Posterior(data, fit, 0);
        var without = IntervalPaths.Posterior(data, fit.Parameters, 0);

        // The average over the points, each with its own posterior.
        Assert.Equal(
            fit.Plausible.Sum(p => p.Weight * IntervalPaths.Posterior(data, p.Parameters, 0).ProbabilityBelow(6, 0.25)),
            with.ProbabilityBelow(6, 0.25),
            1e-12);

        Assert.True(with.SlopeDeviation > without.SlopeDeviation);
        Assert.True(with.SlopeQuantile(0.95) - with.SlopeQuantile(0.05) > without.SlopeQuantile(0.95) - without.SlopeQuantile(0.05));
        Assert.Equal(without.SlopeMean, with.SlopeMean, 0.5 * without.SlopeDeviation);

        // An answer does not depend on what was asked before.
        Assert.Equal(0.5, with.ProbabilityBelow(6, with.ValueQuantile(6, 0.5)), 1e-6);
        Assert.Equal(
            with.LeftBy(3, 6, 0.25, 0.40), IntervalPaths.PosteriorOfCluster(data, fit, 0).Groups[0].LeftBy(3, 6, 0.25, 0.40));
    }

    [Fact]
    public void Parameters_kept_from_a_fit_say_what_the_fit_said()
    {
        var data = SeenOnce();
        var fit = PathCases.Fit(data).Value;
        var kept = fit.Plausible.Select(p => new PlausibleParameters(p.Weight, p.Parameters with { })).ToList();

        Assert.Equal(
            IntervalPaths.Posterior(data, fit, 5).ProbabilityBelow(6, 0.25), IntervalPaths.Posterior(data, kept, 5).ProbabilityBelow(6, 0.25));
        Assert.Equal(
            IntervalPaths.PosteriorOfCluster(data, fit, 1).Groups[1].SlopeMean,
            IntervalPaths.PosteriorOfCluster(data, kept, 1).Groups[1].SlopeMean);
        Assert.Throws<ArgumentException>(() => IntervalPaths.Posterior(data, [], 5));
        Assert.Throws<ArgumentException>(() => IntervalPaths.Posterior(data, [new PlausibleParameters(0.5, Truth)], 5));
        Assert.Throws<ArgumentException>(() => IntervalPaths.PosteriorOfCluster(
            data, [new PlausibleParameters(1.5, Truth), new PlausibleParameters(-0.5, Truth)], 1));
    }

    [Fact]
    public void One_reading_a_leg_holds_sigma_and_says_so()
    {
        var fit = PathCases.Fit(SeenOnce()).Value;

        Assert.Contains(PathRemark.SigmaNotTold, fit.Remarks);
        Assert.Equal(0, fit.StandardErrors.Value.Sigma);

        // What is told is the sum of both variances.
        Assert.Equal(Math.Sqrt((0.02 * 0.02) + (0.006 * 0.006)), double.Hypot(fit.Parameters.Sigma, fit.Parameters.LevelDeviation[0]), 0.006);
    }

    private static PathData SeenOnce()
    {
        var random = new Workshop.Domain.Statistics.RandomSource(4);
        return PathCases.Build(Enumerable.Range(0, 600).Select(_ =>
        {
            var x = random.Uniform(2, 4);
            var y = random.Normal(0.3, 0.02) + (random.Normal(-0.01, 0.01) * x) + random.Normal(0, 0.006);
            var lower = 0.01 * Math.Floor(y / 0.01);
            return new[] { new[] { (x, lower, lower + 0.01) } };
        }));
    }
}
