using System.Globalization;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

public class RoundingTests
{
    /// <summary>
    /// 1.655 and 1.625: CSA B125.1, Annex A, which follows ASTM E29. 12.25 and 12.35: ISO 80000-1, Annex B, rule A, from
    /// memory. 1.347: round once (Ministry of Transportation of Ontario, LS-100). Negative values: rounded like their
    /// magnitude. The last two are exact in decimal and would fail in binary (0.135 and 1.005 have no double).
    /// </summary>
    [Theory]
    [InlineData("12.25", 1, "12.2")]
    [InlineData("12.35", 1, "12.4")]
    [InlineData("1.655", 2, "1.66")]
    [InlineData("1.625", 2, "1.62")]
    [InlineData("1.347", 1, "1.3")]
    [InlineData("-12.25", 1, "-12.2")]
    [InlineData("0.135", 2, "0.14")]
    [InlineData("1.005", 2, "1.00")]
    public void Rule_A_rounds_a_half_to_the_even_digit(string value, int decimals, string rounded) =>
        Assert.Equal(Decimal(rounded), Rounding.HalfEven(Decimal(value), decimals));

    /// <summary>ISO 80000-1, Annex B, rule B, exact by its definition.</summary>
    [Theory]
    [InlineData("12.25", 1, "12.3")]
    [InlineData("12.35", 1, "12.4")]
    [InlineData("1.625", 2, "1.63")]
    [InlineData("1.347", 1, "1.3")]
    [InlineData("-12.25", 1, "-12.3")]
    [InlineData("1.005", 2, "1.01")]
    public void Rule_B_rounds_a_half_to_the_larger_magnitude(string value, int decimals, string rounded) =>
        Assert.Equal(Decimal(rounded), Rounding.HalfUp(Decimal(value), decimals));

    [Theory]
    [InlineData("2.4625", "0.025", "2.450", "2.475")]
    [InlineData("2.4875", "0.025", "2.500", "2.500")]
    [InlineData("2.4624", "0.025", "2.450", "2.450")]
    [InlineData("2.4626", "0.025", "2.475", "2.475")]
    [InlineData("-2.4625", "0.025", "-2.450", "-2.475")]
    [InlineData("0.045", "0.03", "0.06", "0.06")]
    [InlineData("0.075", "0.03", "0.06", "0.09")]
    public void Any_step_serves_as_rounding_range(string value, string range, string halfEven, string halfUp)
    {
        Assert.Equal(Decimal(halfEven), Rounding.HalfEvenToMultiple(Decimal(value), Decimal(range)));
        Assert.Equal(Decimal(halfUp), Rounding.HalfUpToMultiple(Decimal(value), Decimal(range)));
    }

    [Fact]
    public void A_step_of_zero_is_a_bug_of_the_caller() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Rounding.HalfEvenToMultiple(1, 0));

    private static decimal Decimal(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}
