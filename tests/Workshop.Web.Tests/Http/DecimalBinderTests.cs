using Workshop.Web.Http;
using Xunit;

namespace Workshop.Web.Tests.Http;

public sealed class DecimalBinderTests
{
    [Theory]
    [InlineData("0.15", 0.15)]
    [InlineData("0,15", 0.15)]
    [InlineData("0,002", 0.002)]
    [InlineData(" 2.500 ", 2.5)]
    [InlineData("-3,5", -3.5)]
    public void A_point_and_a_comma_are_both_the_decimal_sign(string typed, decimal expected)
    {
        Assert.True(DecimalBinder.TryRead(typed, out var number));
        Assert.Equal(expected, number);
    }

    [Theory]
    [InlineData("1.000,5")]
    [InlineData("1,000.5")]
    [InlineData("1 000")]
    [InlineData("1,000,000")]
    [InlineData("0.1.5")]
    [InlineData("1e3")]
    [InlineData("(5)")]
    [InlineData("0.15 mm")]
    public void Groups_powers_and_units_are_refused_rather_than_guessed(string typed) =>
        Assert.False(DecimalBinder.TryRead(typed, out _));
}
