using System.Text.RegularExpressions;
using CsCheck;
using Workshop.Web.Features.Shared.Drawings;
using Xunit;

namespace Workshop.Web.Tests.Drawings;

public sealed partial class SlopeChartTests
{
    [Fact]
    public void Every_valve_is_a_block_in_the_column_of_its_drift()
    {
        decimal[] slopes = [-0.0101m, -0.0102m, -0.0149m, 0.0005m];

        var chart = Of(slopes, -0.008);

        Assert.Equal(4, chart.Bins.Sum(b => b.Valves));
        Assert.Equal(4, Regex.Count(chart.Valves, "M"));
        Assert.All(slopes, s => Assert.Single(chart.Bins, b => b.From <= s && s < b.To && b.Valves > 0));
        Assert.Equal("2", chart.Tallest!.Value.Text);
        Assert.NotNull(chart.NoneX);
        Assert.InRange(chart.MeanX, SlopeChart.Left, chart.NoneX.Value);
    }

    [Fact]
    public void Many_valves_are_columns_that_stay_in_the_picture()
    {
        var chart = Of([.. Enumerable.Range(0, 5000).Select(i => -0.01m + (0.00001m * (i % 100)))], -0.0095);

        Assert.Equal(5000, chart.Bins.Sum(b => b.Valves));
        Assert.InRange(Regex.Count(chart.Valves, "M"), 1, 30);
    }

    [Fact]
    public void No_valve_at_all_leaves_the_fit_alone_in_the_picture()
    {
        var chart = Of([], -0.01);

        Assert.Equal("", chart.Valves);
        Assert.Null(chart.Tallest);
        Assert.NotEmpty(chart.Spread);
    }

    [Fact]
    public void Whatever_the_slopes_are_nothing_is_lost_and_nothing_leaves_the_picture() =>
        Gen.Select(Gen.Double[-0.3, 0.3].Array[0, 60], Gen.Double[-0.1, 0.1], Gen.Double[0, 0.05]).Sample((drawn, mean, deviation) =>
        {
            var slopes = drawn.Select(s => decimal.Round((decimal)s, 6)).ToList();
            var spread = (mean - deviation, mean + deviation);
            var chart = SlopeChart.Of("c", "t", slopes, mean, spread, SlopeChart.ScaleOf(slopes, [spread]));

            Assert.Equal(slopes.Count, chart.Bins.Sum(b => b.Valves));
            Assert.InRange(chart.Bins.Count, 1, 30);
            Assert.InRange(chart.Ticks.Count, 1, 12);
            Assert.All(Corner().Matches(chart.Valves + chart.Spread), m =>
            {
                Assert.InRange(double.Parse(m.Groups[1].Value), SlopeChart.Left, SlopeChart.Right);
                Assert.InRange(double.Parse(m.Groups[2].Value), SlopeChart.Top - 0.1, SlopeChart.AxisY);
            });
        });

    private static SlopeChart Of(IReadOnlyList<decimal> slopes, double mean)
    {
        var spread = (mean - 0.005, mean + 0.005);
        return SlopeChart.Of("c", "Drift", slopes, mean, spread, SlopeChart.ScaleOf(slopes, [spread]));
    }

    [GeneratedRegex(@"M(-?[\d.]+) (-?[\d.]+)")]
    private static partial Regex Corner();
}
