using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Web.Features.Shared.Drawings;
using Xunit;

namespace Workshop.Web.Tests.Drawings;

public sealed partial class StripGeometryTests
{
    [Fact]
    public void Limits_set_to_and_bar_stand_in_the_order_of_their_values()
    {
        var strip = StripGeometry.Of(Limits(0.10m, 0.20m, 0.15m), new StripSpan("found", 0.12m, 0.14m));
        var (left, right) = Ends(strip.Bars[0]);

        Assert.True(strip.LowerX < left && left < right && right < strip.SetToX && strip.SetToX < strip.UpperX);
        Assert.Equal("0.10", strip.LowerText);
        Assert.False(strip.Named);
    }

    [Fact]
    public void A_step_of_clearance_is_the_same_width_everywhere()
    {
        var strip = StripGeometry.Of(Limits(0.10m, 0.20m, 0.15m), new StripSpan("found", 0.10m, 0.15m));
        var (left, right) = Ends(strip.Bars[0]);

        Assert.Equal(strip.LowerX, left, 1);
        Assert.Equal(strip.SetToX, right, 1);
        Assert.Equal(strip.UpperX - strip.SetToX, strip.SetToX - strip.LowerX, 1);
    }

    [Fact]
    public void An_open_end_runs_out_in_a_point_and_a_closed_one_is_square()
    {
        var open = StripGeometry.Of(Limits(0.10m, 0.20m, 0.15m), new StripSpan("found", null, 0.08m)).Bars[0];
        var closed = StripGeometry.Of(Limits(0.10m, 0.20m, 0.15m), new StripSpan("found", 0.08m, 0.09m)).Bars[0];

        Assert.Contains('L', open.Path);
        Assert.DoesNotContain('L', closed.Path);
    }

    [Fact]
    public void Before_and_after_have_a_row_each_and_their_names()
    {
        var strip = StripGeometry.Of(
            Limits(0.10m, 0.20m, 0.15m), new StripSpan("found", 0.08m, 0.09m), new StripSpan("then", 0.14m, 0.15m, Predicted: true));

        Assert.True(strip.Named);
        Assert.Equal(["found", "then"], strip.Bars.Select(b => b.Name));
        Assert.True(strip.Bars[0].TextY < strip.Bars[1].TextY);
        Assert.True(strip.Bars[1].Predicted);
    }

    /// <summary>A slip of the finger (2 mm for 0.2) must not squeeze the limits into a line or leave the drawing.</summary>
    [Fact]
    public void Nothing_leaves_the_drawing_and_the_limits_stay_apart() =>
        Gen.Select(Gen.Int[1, 500], Gen.Int[10, 500], Gen.Int[-500, 3000], Gen.Int[0, 2000], Gen.Int[0, 3]).Sample(
            (lower, width, start, length, open) =>
            {
                var limits = Limits(lower / 1000m, (lower + width) / 1000m, lower / 1000m);
                var strip = StripGeometry.Of(limits, new StripSpan(
                    "found", open == 1 ? null : start / 1000m, open == 2 ? null : (start + length) / 1000m));

                Assert.All(Coordinates(strip.Bars[0].Path), x => Assert.InRange(x, -2, StripGeometry.Width + 2));
                Assert.InRange(strip.LowerX, strip.Left, StripGeometry.Width);
                Assert.InRange(strip.UpperX, strip.Left, StripGeometry.Width);
                Assert.True(strip.UpperX - strip.LowerX >= 50);
                var (left, right) = Ends(strip.Bars[0]);
                Assert.True(right - left >= 2.9m);
            },
            iter: 20_000);

    private static (decimal Left, decimal Right) Ends(StripBar bar)
    {
        var all = Coordinates(bar.Path);
        return (all.Min(), all.Max());
    }

    // M x y, H x, L x y: the first number after each of them.
    private static List<decimal> Coordinates(string path) =>
        [.. Across().Matches(path).Select(m => decimal.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))];

    [GeneratedRegex(@"[MHL](-?[\d.]+)")]
    private static partial Regex Across();

    private static ClearanceLimits Limits(decimal lower, decimal upper, decimal setTo) => new(
        Side.Intake, 1, Clearance.FromMillimetres(lower), Clearance.FromMillimetres(upper), Clearance.FromMillimetres(setTo),
        LeverRatio.From(1), new Provenance("Invented for tests", "1"));
}
