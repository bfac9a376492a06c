using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Measures;

public class DistanceTests
{
    private const decimal TwelfthDecimal = 0.0000000000005m;

    [Fact]
    public void Kilometres_and_miles_agree_with_the_published_factor()
    {
        var published = CsvTable.Read("miles", CheckValues.Lines("units/miles.csv")).Rows;

        Assert.Equal(4, published.Count);
        Assert.All(published, row =>
        {
            var distance = Distance.FromKilometres(row.Number("km"));
            Assert.InRange(distance.Miles - row.Number("miles"), -TwelfthDecimal, TwelfthDecimal);
        });
    }

    [Fact]
    public void Whole_miles_are_whole_millimetres() =>
        Assert.Equal(1_609_344m, Distance.FromMiles(1).Metres * 1000);

    [Fact]
    public void What_is_left_may_be_below_zero() =>
        Assert.True(Distance.FromKilometres(1) - Distance.FromMiles(1) < Distance.Zero);
}
