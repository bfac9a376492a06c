using CsCheck;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

public class NormalTailsTests
{
    /// <summary>R 4.2.2: <c>pnorm(z, lower.tail = FALSE, log.p = TRUE)</c>.</summary>
    [Theory]
    [InlineData(-37, -5.725571222524577e-300)]
    [InlineData(-8, -6.220960574271787e-16)]
    [InlineData(-1, -0.1727537790234499)]
    [InlineData(0, -0.6931471805599453)]
    [InlineData(1, -1.841021645009264)]
    [InlineData(5, -15.06499839398873)]
    [InlineData(8, -35.01343715991455)]
    [InlineData(20, -203.9171553710973)]
    [InlineData(38, -726.5572160188201)]
    [InlineData(100, -5005.524208694205)]
    public void The_logarithm_of_the_upper_tail_agrees_with_R(double z, double expected) =>
        DigitsOfAgreement.AtLeast(13, NormalTails.LogUpperTail(z), expected, $"log Q({z})");

    /// <summary>Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1; from memory, R 4.2.2 agrees.</summary>
    [Theory]
    [InlineData(1, 0.158655253931457)]
    [InlineData(2, 0.022750131948179)]
    [InlineData(3, 0.001349898031630)]
    public void The_upper_tail_agrees_with_the_handbook(double z, double expected)
    {
        Assert.Equal(expected, NormalTails.UpperTail(z), 1e-15);
        Assert.Equal(1 - expected, NormalTails.UpperTail(-z), 1e-15);
    }

    /// <summary>Q(z) = (1 - P(1/2, z^2 / 2)) / 2 by the incomplete gamma function of another library.</summary>
    [Fact]
    public void The_upper_tail_agrees_with_the_incomplete_gamma_function() =>
        Gen.Double[0, 25].Sample(z => DigitsOfAgreement.AtLeast(
            12, NormalTails.UpperTail(z), MathNet.Numerics.SpecialFunctions.Erfc(z / Math.Sqrt(2)) / 2, $"Q({z})"));

    [Fact]
    public void Mills_ratio_satisfies_its_differential_equation() =>
        Gen.Double[0.01, 60].Sample(z =>
        {
            const double H = 1e-4;
            var slope = (NormalTails.MillsRatio(z + H) - NormalTails.MillsRatio(z - H)) / (2 * H);
            Assert.Equal((z * NormalTails.MillsRatio(z)) - 1, slope, 1e-7);
        });

    /// <summary>Intervals that lie side by side: their probabilities add up, whichever way each is computed.</summary>
    [Fact]
    public void Neighbouring_intervals_add_up_to_the_whole() =>
        Gen.Select(Gen.Double[-30, 30], Gen.Double[-6, 1.5], Gen.Double[0.01, 0.99]).Sample((lower, logWidth, share) =>
        {
            var width = Math.Pow(10, logWidth);
            var upper = lower + width;
            var middle = lower + (share * width);
            var whole = NormalTails.LogDifference(lower, upper);
            var sum = Math.Exp(NormalTails.LogDifference(lower, middle) - whole)
                + Math.Exp(NormalTails.LogDifference(middle, upper) - whole);

            // At 30 standard deviations the ends themselves carry an error of 30 x 2^-50 in the exponent.
            Assert.Equal(1, sum, 1e-9 + (1e-14 / width));
        });

    [Fact]
    public void An_interval_mirrored_about_zero_has_the_same_probability() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Double[0, 10]).Sample((lower, width) => Assert.Equal(
            NormalTails.LogDifference(lower, lower + width), NormalTails.LogDifference(-lower - width, -lower)));

    /// <summary>A very narrow interval is its density times its width, however far out.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-7)]
    [InlineData(38)]
    [InlineData(1000)]
    public void A_narrow_interval_is_density_times_width(double z)
    {
        var (lower, upper) = (z, z + Math.Pow(2, -30));
        var expected = NormalTails.LogDensity((lower + upper) / 2) + Math.Log(upper - lower);

        DigitsOfAgreement.AtLeast(13, NormalTails.LogDifference(lower, upper), expected, $"narrow at {z}");
    }

    [Fact]
    public void Open_and_empty_intervals_have_their_limits()
    {
        const double Infinity = double.PositiveInfinity;

        Assert.Equal(0, NormalTails.LogDifference(-Infinity, Infinity));
        Assert.Equal(NormalTails.LogUpperTail(3), NormalTails.LogDifference(3, Infinity));
        Assert.Equal(NormalTails.LogUpperTail(3), NormalTails.LogDifference(-Infinity, -3));
        Assert.Equal(-Infinity, NormalTails.LogDifference(2, 2));
        Assert.Throws<ArgumentException>(() => NormalTails.LogDifference(2, 1));
        Assert.Throws<ArgumentException>(() => NormalTails.LogDifference(double.NaN, 1));
    }
}
