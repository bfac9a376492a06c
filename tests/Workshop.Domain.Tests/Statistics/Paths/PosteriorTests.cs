using MathNet.Numerics.Distributions;
using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

public class PosteriorTests
{
    private const double Infinity = double.PositiveInfinity;

    private static readonly PathParameters Truth = PathCases.Parameters(0.31, 0.02, -0.012, 0.01, 0.006);

    /// <summary>Brute force in R 4.2.2 at the reference's own maximum, see <see cref="PathCases.CaseA"/>.</summary>
    [Fact]
    public void Posterior_slopes_of_the_reference_case_agree()
    {
        var data = PathCases.CaseA();
        var expected = CsvTable.Read("slopes", CheckValues.Lines("drift/caseA_slopes.csv"));
        foreach (var row in expected.Rows)
        {
            var posterior = IntervalPaths.Posterior(data, PathCases.CaseAMaximum, (int)row.Number("valve") - 1);

            Assert.Equal((double)row.Number("mean"), posterior.SlopeMean, 1e-8);
            DigitsOfAgreement.AtLeast(5, posterior.SlopeDeviation, (double)row.Number("sd"), $"{row}: sd");
        }
    }

    /// <summary>
    /// The same reference: present level, slope, their covariance, and the probability of a value below 0.26 at 1, 2 and 3
    /// units of x after the last reading. The normal approximation beside it is off by more than the whole in the tails.
    /// </summary>
    [Fact]
    public void Forecasts_of_the_reference_case_agree()
    {
        var data = PathCases.CaseA();
        var last = CsvTable.Read("caseA", CheckValues.Lines("drift/caseA.csv")).Rows
            .GroupBy(row => row["valve"]).ToDictionary(g => g.Key, g => (double)g.Max(row => row.Number("x")));
        var expected = CsvTable.Read("forecast", CheckValues.Lines("drift/caseA_forecast.csv"));
        for (var i = 0; i < expected.Rows.Count; i++)
        {
            var posterior = IntervalPaths.Posterior(data, PathCases.CaseAMaximum, i);
            var x = last[expected.Rows[i]["valve"]];

            DigitsOfAgreement.AtLeast(6, posterior.MeanAt(x), Value("now_mean"), $"{i}: level");
            DigitsOfAgreement.AtLeast(5, posterior.DeviationAt(x), Value("now_sd"), $"{i}: its sd");
            DigitsOfAgreement.AtLeast(5, posterior.SlopeMean, Value("slope_mean"), $"{i}: slope");
            DigitsOfAgreement.AtLeast(5, posterior.SlopeDeviation, Value("slope_sd"), $"{i}: its sd");
            DigitsOfAgreement.AtLeast(5, posterior.CovarianceAt(x), Value("cov"), $"{i}: covariance");
            for (var h = 1; h <= 3; h++)
            {
                Assert.Equal(Value($"p{h}"), posterior.ProbabilityBelow(x + h, 0.26), 1e-4);
            }

            double Value(string column) => expected.Numbers(column)[i];
        }
    }

    /// <summary>
    /// Dense grids over level and slope, where the posterior is a plateau as much as where it is nearly normal, near and as far
    /// ahead as anyone asks.
    /// </summary>
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.05)]
    [InlineData(0.10)]
    public void Probabilities_agree_with_brute_force_whatever_the_step_and_the_distance(double step)
    {
        var groups = PathCases.Simulate(6, step, Truth, 31);
        var data = PathCases.Build(groups);
        for (var g = 0; g < groups.Count; g++)
        {
            var posterior = IntervalPaths.Posterior(data, Truth, g);
            var force = BruteForcePosterior.Of(groups[g], Truth);
            foreach (var x in new[] { 0, 2.0, 3, 5, 22 })
            {
                foreach (var limit in new[] { 0.22, 0.27, 0.30 })
                {
                    Assert.Equal(force.Below(x, limit), posterior.ProbabilityBelow(x, limit), 3e-4);
                }

                Assert.Equal(force.Left(2, Math.Max(2, x), 0.26, 0.36), posterior.LeftBy(2, Math.Max(2, x), 0.26, 0.36), 5e-4);
            }

            Assert.Equal(force.Predictive(4, 0.28, 0.28 + step), posterior.PredictiveP(4, 0.28, 0.28 + step), 2e-4);
        }
    }

    /// <summary>
    /// Levels without spread leave the slope alone to decide: one integral, ended at the slope that reaches the limit, and no
    /// count of nodes, near as well as far.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1e-7)]
    public void Without_a_spread_of_levels_the_slope_decides(double deviation)
    {
        var groups = PathCases.Simulate(3, 0.05, Truth with { LevelDeviation = [0] }, 5);
        for (var g = 0; g < groups.Count; g++)
        {
            var posterior = IntervalPaths.Posterior(PathCases.Build(groups), Truth with { LevelDeviation = [deviation] }, g);
            var slopes = Enumerable.Range(-20_000, 40_001).Select(i => Truth.SlopeMean[0] + (Truth.SlopeDeviation[0] * i / 3000)).ToList();
            var logs = slopes.Select(b => Normal.PDFLn(Truth.SlopeMean[0], Truth.SlopeDeviation[0], b) + groups[g].Sum(leg => leg.Sum(r =>
                NormalTails.LogDifference((r.Lower - 0.31 - (b * r.X)) / 0.006, (r.Upper - 0.31 - (b * r.X)) / 0.006)))).ToList();
            var top = logs.Max();
            var weights = logs.Select(log => Math.Exp(log - top)).ToList();
            foreach (var (x, limit) in new[] { (2.0, 0.28), (5, 0.25), (20, 0.1) })
            {
                var expected = slopes.Zip(weights).Where(p => 0.31 + (p.First * x) < limit).Sum(p => p.Second) / weights.Sum();
                Assert.Equal(expected, posterior.ProbabilityBelow(x, limit), 1e-3);
            }
        }
    }

    [Fact]
    public void Without_a_spread_of_slopes_the_level_decides()
    {
        var groups = PathCases.Simulate(3, 0.05, Truth with { SlopeDeviation = [0] }, 5);
        for (var g = 0; g < groups.Count; g++)
        {
            var posterior = IntervalPaths.Posterior(PathCases.Build(groups), Truth with { SlopeDeviation = [0] }, g);
            var force = BruteForcePosterior.Of(groups[g], Truth with { SlopeDeviation = [1e-6] });

            Assert.Equal(0, posterior.SlopeDeviation);
            Assert.Equal(-0.012, posterior.SlopeQuantile(0.9));
            Assert.Equal(force.Below(5, 0.25), posterior.ProbabilityBelow(5, 0.25), 1e-3);
            Assert.Equal(force.Below(20, 0.07), posterior.ProbabilityBelow(20, 0.07), 1e-3);
        }
    }

    [Fact]
    public void A_leg_that_was_set_and_not_yet_seen_has_its_class_for_a_level()
    {
        var builder = new PathDataBuilder();
        builder.Cluster();
        builder.Group();
        builder.Leg();
        builder.Reading(0, 0.30, 0.31);
        builder.Reading(2, 0.27, 0.28);
        builder.Leg(0, target: -0.1);
        var posterior = IntervalPaths.Posterior(builder.Build(), Truth, 0);

        Assert.Equal(0.21, posterior.MeanAt(0), 1e-6);
        Assert.Equal(0.02, posterior.DeviationAt(0), 1e-6);
        Assert.Equal(0.5, posterior.ProbabilityBelow(0, 0.21), 1e-4);
        Assert.Equal(0.158655, posterior.ProbabilityBelow(0, 0.19), 1e-4);
    }

    [Fact]
    public void Leaving_distances_are_where_the_probability_is_reached_and_null_where_it_is_not()
    {
        var groups = PathCases.Simulate(12, 0.01, Truth, 3);
        var data = PathCases.Build(groups);
        var reached = 0;
        for (var g = 0; g < groups.Count; g++)
        {
            var posterior = IntervalPaths.Posterior(data, Truth, g);
            var found = posterior.LeavingDistances(2, 0.20, 0.38, [0.1, 0.5, 0.9], 20);
            for (var i = 0; i < 3; i++)
            {
                var probability = new[] { 0.1, 0.5, 0.9 }[i];
                if (found[i] is { } x)
                {
                    reached++;
                    Assert.Equal(probability, posterior.LeftBy(2, x, 0.20, 0.38), 1e-4);
                    Assert.InRange(x, 2, 22);
                }
                else
                {
                    Assert.True(posterior.LeftBy(2, 22, 0.20, 0.38) < probability);
                }
            }
        }

        Assert.InRange(reached, 12, 35);
    }

    [Fact]
    public void What_is_outside_already_has_left_at_once()
    {
        var data = PathCases.Build([[[(0, 0.30, 0.31), (1, 0.30, 0.31)]]]);

        Assert.Equal([1.0, 1.0, 1.0], IntervalPaths.Posterior(data, Truth, 0).LeavingDistances(1, 0.35, 0.40, [0.1, 0.5, 0.9], 20).Select(x => x ?? -1));
    }

    /// <summary>The normal quantiles of an almost normal posterior.</summary>
    [Fact]
    public void Quantiles_invert_the_probabilities()
    {
        var data = PathCases.CaseA();
        var posterior = IntervalPaths.Posterior(data, PathCases.CaseAMaximum, 2);

        foreach (var probability in new[] { 0.05, 0.5, 0.95 })
        {
            Assert.Equal(probability, posterior.ProbabilityBelow(7, posterior.ValueQuantile(7, probability)), 1e-6);
        }

        Assert.Equal(posterior.SlopeMean + (1.644854 * posterior.SlopeDeviation), posterior.SlopeQuantile(0.95), 0.05 * posterior.SlopeDeviation);
        Assert.Equal(posterior.SlopeMean - (1.644854 * posterior.SlopeDeviation), posterior.SlopeQuantile(0.05), 0.05 * posterior.SlopeDeviation);
    }

    [Fact]
    public void A_reading_that_its_history_contradicts_is_improbable_and_one_that_it_expects_is_not()
    {
        var data = PathCases.Build([[[(0, 0.30, 0.31), (1, 0.29, 0.30), (2, 0.28, 0.29), (3, 0.26, 0.27)]]]);
        var posterior = IntervalPaths.Posterior(data, Truth, 0);

        Assert.True(posterior.PredictiveP(4, 0.25, 0.26) > 0.5);
        Assert.True(posterior.PredictiveP(4, 0.30, 0.31) < 0.01);
        Assert.True(posterior.PredictiveP(4, 0.20, 0.21) < 0.01);
        Assert.Equal(1, posterior.PredictiveP(4, -Infinity, Infinity), 1e-6);
        Assert.True(posterior.PredictiveP(4, 0.30, 0.31) < posterior.PredictiveP(4, 0.30, 0.31, variance: 0.0004));
    }

    /// <summary>
    /// Two groups that share a part of their slopes: dense grids over the part, both slopes and both levels.
    /// </summary>
    [Theory]
    [InlineData(0.01, 0.008, 0.006)]
    [InlineData(0.05, 0.008, 0.006)]
    [InlineData(0.01, 0.001, 0.010)]
    public void The_probability_that_any_has_left_agrees_with_brute_force(double step, double own, double shared)
    {
        var at = Truth with { SlopeDeviation = [own], ClusterDeviation = shared };
        var groups = PathCases.Simulate(2, step, at, 17);
        var posterior = IntervalPaths.PosteriorOfCluster(PathCases.Build(groups), at, 0);
        foreach (var x in new[] { 3.0, 6, 10 })
        {
            var outlook = new Outlook(2, x, 0.25, 0.40);
            var (any, each) = BruteForcePosterior.Cluster(groups, at, 2, x, 0.25, 0.40);

            Assert.Equal(any, posterior.AnyLeftBy([outlook, outlook]), 2e-3);
            Assert.Equal(each[0], posterior.Groups[0].LeftBy(2, x, 0.25, 0.40), 2e-3);
            Assert.Equal(each[1], posterior.AnyLeftBy([null, outlook]), 2e-3);
        }
    }

    [Fact]
    public void Groups_that_share_nothing_leave_independently()
    {
        var groups = PathCases.Simulate(2, 0.01, Truth, 17);
        var posterior = IntervalPaths.PosteriorOfCluster(PathCases.Build(groups), Truth, 0);
        var outlook = new Outlook(2, 6, 0.25, 0.40);
        var each = posterior.Groups.Select(g => g.LeftBy(2, 6, 0.25, 0.40)).ToList();

        Assert.Equal(1 - ((1 - each[0]) * (1 - each[1])), posterior.AnyLeftBy([outlook, outlook]), 1e-12);
    }

    [Fact]
    public void A_group_without_a_leg_and_a_curved_model_are_a_bug_of_the_caller()
    {
        var builder = new PathDataBuilder();
        builder.Cluster();
        builder.Group();

        Assert.Throws<ArgumentException>(() => IntervalPaths.Posterior(builder.Build(), Truth, 0));
        Assert.Throws<ArgumentException>(() => IntervalPaths.Posterior(PathCases.CaseA(), Truth with { Curvature = [0.1] }, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => IntervalPaths.Posterior(PathCases.CaseA(), Truth, 24));
    }
}
