using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Tests.Drift;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Tests.Drift;
using Xunit;

namespace Workshop.Web.Tests.Drawings;

public sealed partial class DriftChartTests
{
    /// <summary>Four visits; at the third 0.10 mm more shim at a ratio of 0.6 takes 0.06 mm.</summary>
    private static LobeRows Swapped() => new LobeRows()
        .At(20_000).Found(0.28m, 0.29m)
        .At(40_000).Found(0.26m, 0.27m)
        .At(60_000).Found(0.24m, 0.25m).CameOut(2.50m).WentIn(2.60m).Left(0.18m, 0.19m)
        .At(80_000).Found(0.16m, 0.17m)
        .At(100_000).Found(0.15m, 0.16m);

    [Fact]
    public void As_measured_the_limits_stand_still_and_the_bars_jump_at_a_swap()
    {
        var chart = Draw(Swapped(), DriftView.AsMeasured);
        var perMm = PerMm(chart);

        Assert.Equal(2, Points(chart.Limits).Count);
        Assert.DoesNotContain("V", chart.Limits, StringComparison.Ordinal);
        var (found, left) = (Span(chart.Bars[2]), Span(chart.Bars[3]));
        Assert.Equal(0.06 * perMm, left.Top - found.Top, 0.3);
        Assert.Equal(0.01 * perMm, found.Bottom - found.Top, 0.3);
        Assert.Equal(["found", "found", "found", "left", "found", "found"], chart.Bars.Select(b => b.Class));
    }

    [Fact]
    public void With_the_shims_out_the_bars_run_on_and_the_limits_step_by_the_shims_part()
    {
        var chart = Draw(Swapped(), DriftView.ShimsOut);

        var (found, left) = (Span(chart.Bars[2]), Span(chart.Bars[3]));
        Assert.Equal(found.Top, left.Top, 0.11);
        var steps = Vertical().Matches(chart.Limits);
        Assert.Equal(2, steps.Count);
        var lower = Points(chart.Limits)[0].Y;
        Assert.Equal(0.06 * PerMm(chart), lower - Number(steps[0].Groups[1].Value), 0.3);
    }

    [Fact]
    public void The_estimate_jumps_with_the_bars_and_runs_straight_with_the_shims_out()
    {
        static double LargestTurn(IReadOnlyList<(double X, double Y)> line) => line.Zip(line.Skip(1))
            .Max(pair => Math.Abs(pair.Second.Y - pair.First.Y) / Math.Max(0.1, pair.Second.X - pair.First.X));

        Assert.True(LargestTurn(Points(Draw(Swapped(), DriftView.AsMeasured).Estimate)) > 20);
        Assert.True(LargestTurn(Points(Draw(Swapped(), DriftView.ShimsOut).Estimate)) < 1);
    }

    [Fact]
    public void A_swap_and_a_cut_are_marked_where_they_happened_with_words()
    {
        var chart = Draw(Swapped().At(120_000).Found(0.14m, 0.15m).Happened(ValveEventKind.ChangeUnknown), DriftView.AsMeasured);

        Assert.Equal([("shim +0.100", false), ("changed?", true)], chart.Marks.Select(m => (m.Text, m.Cuts)));
        Assert.True(chart.Marks[0].X < chart.Marks[1].X);
    }

    [Fact]
    public void An_open_end_runs_out_in_a_point_and_a_reading_left_out_is_drawn_apart()
    {
        var chart = Draw(
            new LobeRows().At(20_000).Found(null, 0.12m).At(40_000).Found(0.20m, null).At(60_000).Found(0.18m, 0.19m, notCold: true),
            DriftView.AsMeasured);

        Assert.All(chart.Bars.Take(2), bar => Assert.Contains('L', bar.Path));
        Assert.DoesNotContain('L', chart.Bars[2].Path);
        Assert.Equal("kept-out", chart.Bars[2].Class);
        Assert.DoesNotContain(Draw(new LobeRows().At(20_000).Found(0.2m, 0.3m).At(30_000).Found(0.2m, 0.3m, notCold: true), DriftView.ShimsOut).Bars,
            bar => bar.Class == "kept-out");
    }

    [Fact]
    public void The_words_say_what_the_picture_shows()
    {
        var chart = Draw(Swapped(), DriftView.AsMeasured);

        Assert.Equal("Cylinder 1, exhaust 1: clearance as measured", chart.Title);
        Assert.Equal("6 readings from 20,000 km (0.28 to 0.29) to 100,000 km (0.15 to 0.16). Limits 0.10 to 0.30 mm.", chart.Description);
    }

    [Fact]
    public void Miles_are_written_across_where_the_odometer_counts_them()
    {
        var chart = Draw(Swapped(), DriftView.AsMeasured, OdometerUnit.Miles);

        Assert.Equal("what the engine has done, mi", chart.AxisText);
        Assert.Contains("from 12,427 mi", chart.Description, StringComparison.Ordinal);
        Assert.True(Furthest(chart) < Furthest(Draw(Swapped(), DriftView.AsMeasured)));

        static double Furthest(DriftChart of) => double.Parse(of.Across[^1].Text, NumberStyles.AllowThousands, CultureInfo.InvariantCulture);
    }

    [Fact]
    public void A_lobe_never_read_has_no_picture() => Assert.Null(DriftChart.Of("c", Known(new LobeRows()), OdometerUnit.Kilometres, DriftView.AsMeasured));

    [Fact]
    public void Whatever_was_read_stays_inside_the_drawing() =>
        Gen.Select(
            Gen.Select(Gen.Int[0, 40_000], Gen.Int[0, 150], Gen.Int[1, 20], Gen.Int[0, 5]).Array[1, 8], Gen.Bool, Gen.Bool)
        .Sample((visits, shimsOut, miles) =>
        {
            var rows = new LobeRows();
            var km = 0;
            foreach (var (further, go, width, what) in visits)
            {
                rows.At(km += further).Found(what == 1 ? null : go / 100m, what == 2 ? null : (go + width) / 100m);
                if (what == 3)
                {
                    rows.CameOut(2.5m).WentIn(2.5m + (width / 40m)).Left(go / 100m, (go + width) / 100m);
                }
                else if (what == 4)
                {
                    rows.Happened(ValveEventKind.ScrewTurned);
                }
            }

            var chart = Draw(
                rows, shimsOut ? DriftView.ShimsOut : DriftView.AsMeasured, miles ? OdometerUnit.Miles : OdometerUnit.Kilometres);

            foreach (var path in chart.Bars.Select(b => b.Path)
                .Concat([chart.Limits, chart.SetTo, chart.Estimate, chart.Ahead, chart.Band, chart.InnerBand, chart.Reach]))
            {
                Assert.DoesNotContain("NaN", path, StringComparison.Ordinal);
                Assert.All(Points(path), p => Assert.True(p.X is >= 0 and <= DriftChart.Width && p.Y is >= 0 and <= DriftChart.Height, path));
            }

            Assert.True(chart.Across.Count is >= 1 and <= 12 && chart.Upright.Count is >= 2 and <= 12);
        });

    [Fact]
    public void The_narrow_band_lies_within_the_wide_one_and_both_open_towards_what_is_not_known_yet()
    {
        var chart = Draw(Swapped(), DriftView.AsMeasured);

        var (wide, narrow) = (Widths(chart.Band), Widths(chart.InnerBand));
        Assert.Equal(wide.Count, narrow.Count);
        Assert.All(wide.Zip(narrow), w => Assert.True(w.Second < w.First, $"{w.Second} within {w.First}"));
        Assert.True(wide[^1] > 1.5 * wide[^9]);
        // Of a normal quantity 50 % lie within 0.6745 and 90 % within 1.6449 standard deviations.
        Assert.Equal(0.6745 / 1.6449, narrow[^1] / wide[^1], 0.05);
    }

    [Fact]
    public void The_next_check_is_marked_where_it_lies_and_not_where_it_lies_beyond_the_picture()
    {
        var lobe = Known(Swapped());
        var near = DriftChart.Of("c", lobe, OdometerUnit.Kilometres, DriftView.AsMeasured, Distance.FromKilometres(110_000))!;
        var far = DriftChart.Of("c", lobe, OdometerUnit.Kilometres, DriftView.AsMeasured, Distance.FromKilometres(900_000))!;

        Assert.Equal("next check", near.NextCheck!.Text);
        Assert.InRange(near.NextCheck.X, near.Marks[^1].X, DriftChart.Right);
        Assert.Equal(["shim +0.100"], near.Marks.Select(m => m.Text));
        Assert.Null(far.NextCheck);
    }

    [Fact]
    public void The_limits_are_named_and_the_set_to_value_where_there_is_room()
    {
        var labels = Draw(Swapped(), DriftView.AsMeasured).Labels;

        Assert.Equal(["limit", "limit", "set to"], labels.Select(l => l.Text));
        Assert.InRange(labels[2].Y, labels[0].Y + 12, labels[1].Y - 12);
    }

    [Fact]
    public void Every_sign_of_the_chart_is_in_the_key_and_drawn_alike_on_the_page_and_in_the_file()
    {
        var sheet = File.ReadAllText(Path.Combine(AcceptedFile.Root, "src", "Workshop.Web", "wwwroot", "assets", "workshop.css"));
        var classes = DriftKey.Of(shims: true).Entries.Select(e => e.Class).ToList();

        Assert.All(
            new[] { "found", "left", "kept-out", "swap", "cut", "check", "limit", "set-to", "estimate", "ahead", "reach", "fan-50", "fan-90" },
            c => Assert.Contains(c, classes));
        Assert.All(classes, c => Assert.Contains($"\n.{c} {{", "\n" + DriftPicture.Style, StringComparison.Ordinal));
        Assert.All(classes, c => Assert.Contains($"svg.drift .{c} {{", sheet, StringComparison.Ordinal));
        Assert.DoesNotContain("swap", DriftKey.Of(shims: false).Entries.Select(e => e.Class));
        // The bands differ by their edges, too: one dotted, one whole.
        Assert.Matches(@"\.fan-90 \{[^}]*stroke-dasharray", DriftPicture.Style);
        Assert.DoesNotMatch(@"\.fan-50 \{[^}]*stroke-dasharray", DriftPicture.Style);
    }

    private static DriftChart Draw(LobeRows rows, DriftView view, OdometerUnit unit = OdometerUnit.Kilometres) =>
        DriftChart.Of("c", Known(rows), unit, view)!;

    /// <summary>Exhaust 1 of cylinder 1 with limits of 0.10 to 0.30, of an engine model whose valves close up by 0.01 mm per 10,000 km.</summary>
    private static DriftOfLobe Known(LobeRows rows)
    {
        var specification = TestEngines.Twin();
        specification = specification with
        {
            Limits = [.. specification.Limits.Select(l => l.Side == Side.Exhaust ? l with { Lower = Clearance.FromMillimetres(0.10m) } : l)],
        };
        var engine = DriftEngine.Of(Guid.Empty, specification, rows.History(), null);
        return DriftOfLobe.Of(
            new EngineDrift(Guid.Empty, engine, null, null, null),
            engine.Lobes.Single(l => l.Lobe.Valve == LobeRows.Valve),
            EngineForecast.Of(engine, KnownDrift.Fit),
            null,
            null,
            new WorkshopTime(DateTimeZone.Utc));
    }

    /// <summary>How wide a band is at each of its places, from left to right.</summary>
    private static List<double> Widths(string band)
    {
        var points = Points(band);
        var half = points.Count / 2;
        return [.. points.Take(half).Zip(points.Skip(half).Reverse()).Select(p => p.Second.Y - p.First.Y)];
    }

    private static double PerMm(DriftChart chart)
    {
        var (low, high) = (chart.Upright[0], chart.Upright[^1]);
        return (low.At - high.At) / (Number(high.Text) - Number(low.Text));
    }

    private static (double Top, double Bottom) Span(ChartBar bar)
    {
        var numbers = Numbers().Matches(bar.Path).Select(m => Number(m.Value)).ToArray();
        return (numbers[1], numbers[3]);
    }

    /// <summary>The points that a path names with both coordinates.</summary>
    private static List<(double X, double Y)> Points(string path) =>
        [.. Pair().Matches(path).Select(m => (Number(m.Groups[1].Value), Number(m.Groups[2].Value)))];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"[ML](-?[\d.]+) (-?[\d.]+)")]
    private static partial Regex Pair();

    [GeneratedRegex(@"V(-?[\d.]+)")]
    private static partial Regex Vertical();

    [GeneratedRegex(@"-?[\d.]+")]
    private static partial Regex Numbers();
}
