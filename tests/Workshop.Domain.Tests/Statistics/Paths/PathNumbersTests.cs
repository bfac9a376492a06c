using CsCheck;
using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

/// <summary>Small fleets of any kind: a result in which everything is a number, or a reason in words; never an exception.</summary>
public class PathNumbersTests
{
    private const double Infinity = double.PositiveInfinity;

    [Fact]
    public void Whatever_was_read_gives_numbers_or_a_reason() =>
        Gen.ULong.Sample(
            seed =>
            {
                var random = new RandomSource(seed);
                var data = AnyFleet(random);
                var shared = random.Uniform(0, 1) < 0.5;
                var fit = PathCases.Fit(data, new() { SharedSlopes = shared });
                if (!fit.HasValue)
                {
                    Assert.False(string.IsNullOrWhiteSpace(fit.WhyNot.Explanation));
                    return;
                }

                Assert.True(double.IsFinite(fit.Value.LogLikelihood));
                AllNumbers(fit.Value.Parameters);
                AllNumbers(fit.Value.StandardErrors.Value);
                Assert.Equal(1, fit.Value.Plausible.Sum(p => p.Weight), 1e-12);
                Assert.All(fit.Value.Plausible, p => AllNumbers(p.Parameters));
                for (var cluster = 0; cluster < data.Clusters; cluster++)
                {
                    Assert.All(IntervalPaths.PosteriorOfCluster(data, fit.Value, cluster).Groups, SaysNumbers);
                }
            },
            iter: 60);

    private static void SaysNumbers(GroupPosterior posterior)
    {
        Assert.True(double.IsFinite(posterior.SlopeMean) && double.IsFinite(posterior.MeanAt(3)) && double.IsFinite(posterior.SlopeQuantile(0.9)));
        Assert.True(posterior.SlopeDeviation >= 0 && posterior.DeviationAt(3) >= 0);
        Assert.InRange(posterior.LeftBy(1, 20, 0.2, 0.4), 0, 1);
        Assert.InRange(posterior.ProbabilityBelow(5, 0.3), 0, 1);
        Assert.InRange(posterior.PredictiveP(5, 0.3, 0.35), 0, 1);
        var distances = posterior.LeavingDistances(1, 0.2, 0.4, [0.1, 0.5, 0.9], 20);
        Assert.All(distances, distance => Assert.True(distance is null or (>= 1 and <= 21)));
    }

    /// <summary>One to six engines of one to four valves; blades of one step or several, none that enters, none that does not.</summary>
    private static PathData AnyFleet(RandomSource random)
    {
        var builder = new PathDataBuilder();
        var step = Choice(random, 0.01, 0.05, 0.1);
        var (levelSpread, slopeSpread, sigma) = (Choice(random, 0, 0.02), Choice(random, 0, 0.01), Choice(random, 0, 0.006, 0.03));
        var place = Choice(random, 0, 1);
        var classes = random.Uniform(0, 1) < 0.5 ? 1 : 2;
        for (var engine = Whole(random, 1, 6); engine > 0; engine--)
        {
            builder.Cluster();
            for (var valve = Whole(random, 1, 4); valve > 0; valve--)
            {
                var slope = random.Normal(-0.01, slopeSpread + 1e-12);
                builder.Group(valve % classes);
                for (var leg = Whole(random, 1, 3); leg > 0; leg--)
                {
                    var level = random.Normal(0.3, levelSpread + 1e-12);
                    builder.Leg(leg % classes, Choice(random, 0, 0.3));
                    for (var k = Whole(random, 0, 3); k > 0; k--)
                    {
                        var x = place == 0 ? k : random.Uniform(0, 6);
                        var own = random.Uniform(0, 1) < 0.1 ? 0.05 : step;
                        var lower = own * Math.Floor((level + (slope * x) + random.Normal(0, sigma + 1e-12)) / own);
                        builder.Reading(x, lower < 0.2 ? -Infinity : lower, lower > 0.4 ? Infinity : lower + own);
                    }
                }
            }
        }

        return builder.Build();
    }

    private static int Whole(RandomSource random, int least, int most) => least + (int)Math.Floor(random.Uniform(0, most - least + 1 - 1e-9));

    private static double Choice(RandomSource random, params double[] values) => values[Whole(random, 0, values.Length - 1)];

    private static void AllNumbers(PathParameters at) => Assert.All(
        at.LevelMean.Concat(at.LevelDeviation).Concat(at.SlopeMean).Concat(at.SlopeDeviation).Append(at.Sigma).Append(at.ClusterDeviation),
        value => Assert.True(double.IsFinite(value)));
}
