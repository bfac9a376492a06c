using Workshop.Domain.Clearances;

namespace Workshop.Domain.Tests.Clearances;

public class ConformanceTests
{
    /// <summary>
    /// JCGM 106:2012, conformance probability at one limit, Phi((upper - value) / u): closed form. The standard's table rounds
    /// the same: .80 at .84, .90 at 1.28, .95 at 1.64, .99 at 2.33, .999 at 3.09 (from memory).
    /// </summary>
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(0.5, 0.6914624613)]
    [InlineData(1, 0.8413447461)]
    [InlineData(1.28, 0.8997274320)]
    [InlineData(1.64, 0.9494974165)]
    [InlineData(1.645, 0.9500150945)]
    [InlineData(2, 0.9772498681)]
    [InlineData(2.33, 0.9900969244)]
    [InlineData(3.09, 0.9989992175)]
    public void Probability_at_one_limit_is_the_normal_distribution(double distanceInU, double probability)
    {
        Assert.Equal(probability, Conformance.Probability(0, 0.004, double.NegativeInfinity, 0.004 * distanceInU), 10);
        Assert.Equal(probability, Conformance.Probability(0, 0.004, -0.004 * distanceInU, double.PositiveInfinity), 10);
    }

    /// <summary>ISO 14253-1:2017 with g = 1.65 u, own arithmetic: 0.10 to 0.15 mm, u = 0.004, g = 0.0066: 0.1066 to 0.1434 is proven.</summary>
    [Theory]
    [InlineData(0.1067, Conformity.Proven)]
    [InlineData(0.1433, Conformity.Proven)]
    [InlineData(0.1065, Conformity.NearLimit)]
    [InlineData(0.1435, Conformity.NearLimit)]
    [InlineData(0.148, Conformity.NearLimit)]
    [InlineData(0.158, Conformity.Disproven)]
    [InlineData(0.0933, Conformity.Disproven)]
    public void A_value_is_proven_only_inside_the_guard_band(double value, Conformity conformity) =>
        Assert.Equal(conformity, Conformance.Of(value, 0.10, 0.15, Conformance.Width(GuardBand.At95Percent, 0.004)));

    [Fact]
    public void Beyond_the_upper_limit_by_half_of_u_the_probability_is_that_of_minus_a_half()
    {
        Assert.Equal(0.6914624613, Conformance.Probability(0.148, 0.004, 0.10, 0.15), 10);
        Assert.Equal(1 - 0.6914624613, Conformance.Probability(0.152, 0.004, 0.10, 0.15), 10);
    }

    [Fact]
    public void Without_uncertainty_the_limits_themselves_decide()
    {
        Assert.Equal([1, 1, 0], new[] { 0.10, 0.15, 0.1501 }.Select(v => Conformance.Probability(v, 0, 0.10, 0.15)));
        Assert.Equal(Conformity.Proven, Conformance.Of(0.10, 0.10, 0.15, Conformance.Width(GuardBand.Off, 0.004)));
        Assert.Equal(Conformity.Disproven, Conformance.Of(0.099, 0.10, 0.15, Conformance.Width(GuardBand.Off, 0.004)));
    }

    [Theory]
    [InlineData(GuardBand.Off, 0)]
    [InlineData(GuardBand.At95Percent, 0.0066)]
    [InlineData(GuardBand.ExpandedUncertainty, 0.008)]
    public void The_guard_band_is_so_many_standard_uncertainties_wide(GuardBand band, double width) =>
        Assert.Equal(width, Conformance.Width(band, 0.004), 12);
}
