using CsCheck;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Web.Features.Compression;
using Workshop.Web.Features.Shared.Drawings;
using Xunit;

namespace Workshop.Web.Tests.Drawings;

public sealed class CylinderStripsTests
{
    private static readonly CompressionLimits Limits = new(
        Pressure.FromKilopascals(1000), EngineWarmth.Warm, new Provenance("Invented manual", "1"))
    {
        LargestLeakDownPercent = 15, LeakDownAt = Pressure.FromKilopascals(600),
    };

    [Fact]
    public void A_bar_is_as_long_as_its_figure_and_the_end_stop_stands_where_the_limit_is()
    {
        var strips = CylinderStrips.OfPressure(Answer([Dry(1, 500), Dry(2, 1250)]), Stage.AsFound)!;
        var (short1, long2) = (strips.Rows[0].BarTo!.Value - CylinderStrips.Left, strips.Rows[1].BarTo!.Value - CylinderStrips.Left);

        Assert.Equal(2.5m, long2 / short1, 6);
        Assert.Equal(2m, (strips.LimitX!.Value - CylinderStrips.Left) / short1, 6);
        Assert.True(long2 <= CylinderStrips.Right - CylinderStrips.Left);
        Assert.Equal(("least 1000 kPa", true), (strips.LimitText, strips.AllowedAbove));
        Assert.Equal(["500 kPa", "1250 kPa"], strips.Rows.Select(r => r.Value));
    }

    [Fact]
    public void The_feet_of_an_end_stop_point_to_the_side_that_is_allowed()
    {
        var answer = Answer([Dry(1, 1100) with { LeakDown = Leak(8, 600) }]);
        var (pressure, leakage) = (CylinderStrips.OfPressure(answer, Stage.AsFound)!, CylinderStrips.OfLeakage(answer, Stage.AsFound)!);

        Assert.StartsWith($"M{StripGeometry.Write(pressure.LimitX!.Value + 5)} ", pressure.StopOf(pressure.Rows[0]), StringComparison.Ordinal);
        Assert.StartsWith($"M{StripGeometry.Write(leakage.LimitX!.Value - 5)} ", leakage.StopOf(leakage.Rows[0]), StringComparison.Ordinal);
    }

    [Fact]
    public void Earlier_visits_are_ticks_only_where_they_were_measured_alike_and_the_last_of_them_is_the_longest()
    {
        var strips = CylinderStrips.OfPressure(
            Answer([Dry(1, 1000)], [Dry(1, 900, EngineWarmth.Cold)], [Dry(1, 1100)], [Dry(1, 1200)], [Dry(1, 1150, throttle: false)]), Stage.AsFound)!;
        var (row, bar) = (strips.Rows[0], strips.Rows[0].BarTo!.Value);

        Assert.Equal([1.1m, 1.2m], row.Earlier.Select(t => decimal.Round((t.X - CylinderStrips.Left) / (bar - CylinderStrips.Left), 6)));
        Assert.Equal([true, false], row.Earlier.Select(t => t.Newest));
        Assert.True(row.Earlier[0].Top < row.Earlier[1].Top && row.Earlier[1].Top < row.BaseY);
        Assert.Contains("before 1100 kPa, 1200 kPa", strips.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_measured_as_the_limit_wants_is_an_outline_and_what_was_not_measured_has_no_bar()
    {
        var cold = CylinderStrips.OfPressure(Answer([Dry(1, 900, EngineWarmth.Cold), Nothing(2)], [Dry(1, 880, EngineWarmth.Cold), Dry(2, 1210)]), Stage.AsFound)!;

        Assert.False(cold.Rows[0].Compared);
        Assert.Single(cold.Rows[0].Earlier);
        Assert.Equal((null, "not measured"), (cold.Rows[1].BarTo, cold.Rows[1].Value));
        Assert.Single(cold.Rows[1].Earlier);
        Assert.False(CylinderStrips.OfLeakage(Answer([Nothing(1) with { LeakDown = Leak(8, 500) }]), Stage.AsFound)!.Rows[0].Compared);
        Assert.Null(CylinderStrips.OfPressure(Answer([Nothing(1)]), Stage.AsFound));
        Assert.Null(CylinderStrips.OfPressure(Answer([Dry(1, 1000)]), Stage.AsLeft));
    }

    [Fact]
    public void Nothing_leaves_the_drawing() =>
        Gen.Select(Gen.Int[0, 3000].Array[1, 6], Gen.Int[0, 3000].Array[0, 5]).Sample((now, before) =>
        {
            var strips = CylinderStrips.OfPressure(
                Answer([.. now.Select((kpa, at) => Dry(at + 1, kpa))], [.. before.Select(kpa => new[] { Dry(1, kpa) })]), Stage.AsFound)!;
            var all = strips.Rows.SelectMany(r => r.Earlier.Select(t => t.X).Append(r.BarTo!.Value)).Append(strips.LimitX!.Value);

            Assert.All(all, x => Assert.InRange(x, CylinderStrips.Left, CylinderStrips.Right));
            Assert.All(strips.Rows.SelectMany(r => r.Earlier.Select(t => t.Top)), top => Assert.InRange(top, 0, strips.Height));
            Assert.True(strips.Rows[^1].BaseY < strips.Height);
        });

    private static GetCompression.Answer Answer(CylinderView[] now, params CylinderView[][] earlier) => new(
        1001, [], null, false, null, Limits, now, [.. now.Select(c => Nothing(c.Cylinder))], [],
        [.. earlier.Select((cylinders, age) => new GetCompression.Visit(1000 - age, new LocalDate(2025, 6, 1).PlusMonths(-age), Stage.AsLeft, 10_000, "km", cylinders))]);

    private static CylinderView Nothing(int cylinder) => new(cylinder, CylinderVerdict.NotMeasured, [], null, null, null);

    private static CylinderView Dry(int cylinder, decimal kpa, EngineWarmth warmth = EngineWarmth.Warm, bool throttle = true) =>
        Nothing(cylinder) with { Verdict = CylinderVerdict.NotJudged, Dry = new PressureView(kpa, $"{kpa} kPa", warmth, throttle, null) };

    private static LeakDownView Leak(decimal percent, decimal atKpa) => new(percent, atKpa, [], $"{percent} %");
}
