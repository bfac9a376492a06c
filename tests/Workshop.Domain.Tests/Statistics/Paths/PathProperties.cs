using CsCheck;
using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Statistics.Paths;

/// <summary>What must hold for all readings.</summary>
public class PathProperties
{
    private static readonly PathParameters Truth = PathCases.Parameters(0.3, 0.02, -0.01, 0.01, 0.006, 0.004);

    private static readonly Gen<(double Step, ulong Seed)> Fleet = Gen.Select(Gen.Int[0, 2].Select(i => new[] { 0.01, 0.02, 0.05 }[i]), Gen.ULong);

    [Fact]
    public void A_shift_of_all_readings_is_a_shift_of_the_levels() =>
        Gen.Select(Fleet, Gen.Double[-5, 5]).Sample(
            (fleet, by) =>
            {
                var groups = PathCases.Simulate(8, fleet.Step, Truth, fleet.Seed);
                Near(
                    PathCases.LogLikelihood(PathCases.Build(groups), Truth),
                    PathCases.LogLikelihood(
                        Changed(groups, r => (r.X, r.Lower + by, r.Upper + by)), Truth with { LevelMean = [Truth.LevelMean[0] + by] }));
            },
            iter: 20);

    [Fact]
    public void Another_unit_of_distance_is_another_unit_of_slope() =>
        Gen.Select(Fleet, Gen.Double[0.001, 1000]).Sample(
            (fleet, unit) =>
            {
                var groups = PathCases.Simulate(8, fleet.Step, Truth, fleet.Seed);
                Near(
                    PathCases.LogLikelihood(PathCases.Build(groups), Truth),
                    PathCases.LogLikelihood(Changed(groups, r => (r.X * unit, r.Lower, r.Upper)), Truth with
                    {
                        SlopeMean = [Truth.SlopeMean[0] / unit],
                        SlopeDeviation = [Truth.SlopeDeviation[0] / unit],
                        ClusterDeviation = Truth.ClusterDeviation / unit,
                    }));
            },
            iter: 20);

    [Fact]
    public void Another_unit_of_the_readings_scales_the_fit() =>
        Fleet.Sample(
            fleet =>
            {
                var groups = PathCases.Simulate(24, fleet.Step, Truth, fleet.Seed);
                var plain = PathCases.Fit(PathCases.Build(groups), new() { StandardErrors = false });
                var scaled = PathCases.Fit(
                    Changed(groups, r => (r.X / 7, 25.4 * r.Lower, 25.4 * r.Upper)), new() { StandardErrors = false });

                Assert.Equal(plain.WhyNot?.Reason, scaled.WhyNot?.Reason);
                if (plain.HasValue)
                {
                    Assert.Equal(plain.Value.LogLikelihood, scaled.Value.LogLikelihood, 1e-4);
                    DigitsOfAgreement.AtLeast(2, scaled.Value.Parameters.SlopeMean[0] / (7 * 25.4), plain.Value.Parameters.SlopeMean[0], "slope");
                }
            },
            iter: 12);

    [Fact]
    public void The_order_of_readings_legs_and_groups_does_not_matter() =>
        Gen.Select(Fleet, Gen.ULong).Sample(
            (fleet, seed) =>
            {
                var random = new RandomSource(seed);
                var groups = PathCases.Simulate(8, fleet.Step, Truth, fleet.Seed);
                var shuffled = groups.Chunk(4).OrderBy(_ => random.Bits()).SelectMany(cluster => cluster.OrderBy(_ => random.Bits()))
                    .Select(g => g.OrderBy(_ => random.Bits()).Select(l => l.OrderBy(_ => random.Bits())));
                Near(
                    PathCases.LogLikelihood(PathCases.Build(groups), Truth),
                    PathCases.LogLikelihood(PathCases.Build(shuffled), Truth));
            },
            iter: 20);

    /// <summary>A target is only where a leg's level is counted from.</summary>
    [Fact]
    public void A_target_taken_off_the_readings_or_given_to_the_leg_is_the_same() =>
        Gen.Select(Fleet, Gen.Double[-1, 1]).Sample(
            (fleet, target) =>
            {
                var groups = PathCases.Simulate(4, fleet.Step, Truth, fleet.Seed);
                var builder = new PathDataBuilder();
                builder.Cluster();
                foreach (var group in groups)
                {
                    builder.Group();
                    foreach (var leg in group)
                    {
                        builder.Leg(0, target);
                        leg.ForEach(r => builder.Reading(r.X, r.Lower + target, r.Upper + target));
                    }
                }

                Near(
                    PathCases.LogLikelihood(PathCases.Build(groups), Truth),
                    PathCases.LogLikelihood(builder.Build(), Truth));
            },
            iter: 20);

    /// <summary>A known change of level within a leg, told as a covariate, is the readings moved by it.</summary>
    [Fact]
    public void A_covariate_with_a_known_coefficient_moves_the_readings() =>
        Gen.Select(Fleet, Gen.Double[0.4, 1], Gen.Double[-0.2, 0.2]).Sample(
            (fleet, ratio, thicker) =>
            {
                var groups = PathCases.Simulate(4, fleet.Step, Truth, fleet.Seed);
                var builder = new PathDataBuilder();
                builder.Cluster();
                foreach (var group in groups)
                {
                    builder.Group();
                    foreach (var leg in group)
                    {
                        builder.Leg();
                        leg.ForEach(r => builder.Reading(
                            r.X,
                            r.Lower - (r.X > 1 ? ratio * thicker : 0),
                            r.Upper - (r.X > 1 ? ratio * thicker : 0),
                            covariate: r.X > 1 ? thicker : 0));
                    }
                }

                Near(
                    PathCases.LogLikelihood(PathCases.Build(groups), Truth),
                    PathCases.LogLikelihood(builder.Build(), Truth with { CovariateCoefficient = -ratio }));
            },
            iter: 20);

    /// <summary>What is said of a group moves and stretches with its readings, and does not ask in which order they came.</summary>
    [Fact]
    public void A_posterior_moves_with_the_readings_and_stretches_with_their_unit() =>
        Gen.Select(Fleet, Gen.Double[-5, 5], Gen.Double[0.01, 100]).Sample(
            (fleet, by, unit) =>
            {
                var groups = PathCases.Simulate(4, fleet.Step, Truth, fleet.Seed);
                var plain = IntervalPaths.Posterior(PathCases.Build(groups), Truth, 2);
                var changed = IntervalPaths.Posterior(
                    Changed(groups.Select(g => g.Select(l => l.AsEnumerable().Reverse().ToList()).ToList()), r => (r.X * unit, r.Lower + by, r.Upper + by)),
                    Truth with
                    {
                        LevelMean = [Truth.LevelMean[0] + by],
                        SlopeMean = [Truth.SlopeMean[0] / unit],
                        SlopeDeviation = [Truth.SlopeDeviation[0] / unit],
                        ClusterDeviation = Truth.ClusterDeviation / unit,
                    },
                    2);

                Assert.Equal(plain.SlopeMean, changed.SlopeMean * unit, 1e-6);
                Assert.Equal(plain.SlopeQuantile(0.95), changed.SlopeQuantile(0.95) * unit, 1e-6);
                Assert.Equal(plain.MeanAt(5) + by, changed.MeanAt(5 * unit), 1e-6);
                Assert.Equal(plain.ProbabilityBelow(5, 0.25), changed.ProbabilityBelow(5 * unit, 0.25 + by), 1e-5);
                var distances = plain.LeavingDistances(2, 0.2, 0.4, [0.1, 0.5, 0.9], 20);
                var stretched = changed.LeavingDistances(2 * unit, 0.2 + by, 0.4 + by, [0.1, 0.5, 0.9], 20 * unit);
                Assert.All(distances, (distance, i) => Assert.Equal(distance ?? 22, (stretched[i] ?? (22 * unit)) / unit, 1e-3));
            },
            iter: 15);

    private static PathData Changed(
        IEnumerable<List<List<(double X, double Lower, double Upper)>>> groups,
        Func<(double X, double Lower, double Upper), (double, double, double)> change) =>
        PathCases.Build(groups.Select(g => g.Select(l => l.Select(change))));

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-6 * Math.Max(1, Math.Abs(expected)));
}
