using CsCheck;
using Workshop.Domain.Consumables;

namespace Workshop.Domain.Tests.Consumables;

public class ORingGlandTests
{
    /// <summary>
    /// Static glands of a public seal design guide: least and most squeeze in whole percent, for a ring that is not stretched. All
    /// twenty figures agree as printed.
    /// </summary>
    [Fact]
    public void Squeeze_is_that_of_the_published_glands() =>
        Assert.All(CsvTable.Read("glands", CheckValues.Lines("seals/static-glands.csv")).Rows, row =>
        {
            var section = Span.Around(row.Number("section_in") * 25.4m, row.Number("section_tolerance_in") * 25.4m);
            var depth = new Span((double)row.Number("depth_min_in") * 25.4, (double)row.Number("depth_max_in") * 25.4);
            const double On = 60;
            var gland = row["kind"] == "face"
                ? new Gland(GlandKind.FacePressedInward, new Span(On, On), depth, new Span(9, 9))
                : new Gland(GlandKind.RadialOnPiston, new Span(On, On), new Span(On + (2 * depth.Lowest), On + (2 * depth.Highest)), new Span(9, 9));

            var squeeze = ORingGland.Fit(new Span(On, On), section, gland).Squeeze;

            Assert.Equal((double)row.Number("squeeze_min_percent"), Math.Round(squeeze.Least, MidpointRounding.AwayFromZero));
            Assert.Equal((double)row.Number("squeeze_max_percent"), Math.Round(squeeze.Most, MidpointRounding.AwayFromZero));
        });

    /// <summary>Public examples, seen: section 2.0 pressed to 1.5 is 25 %; section 3 in a groove 2.3 deep is pressed by 0.7 mm.</summary>
    [Theory]
    [InlineData(2.0, 1.5, 25)]
    [InlineData(3.0, 2.3, 0.7 / 3 * 100)]
    public void Squeeze_is_the_share_of_the_section(double section, double depth, double percent)
    {
        var fit = ORingGland.Fit(
            new Span(30, 30), new Span(section, section), new Gland(GlandKind.FacePressedInward, new Span(30, 30), new Span(depth, depth), new Span(4, 4)));

        Assert.Equal(percent, fit.Squeeze.Least, 9);
        Assert.Equal(percent, fit.Squeeze.Most, 9);
        Assert.Equal(0, fit.Stretch.Most, 9);
        Assert.Equal(100 * Math.PI / 4 * section * section / (4 * depth), fit.Fill.Most, 9);
    }

    /// <summary>Public rule, seen: the section shrinks by about half of the stretch, in percent.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(5)]
    public void A_stretched_ring_thins_by_about_half_of_its_stretch(double percent)
    {
        var thinned = 100 * (1 - (ORingGland.SectionWhenStretched(50, 3, 50 * (1 + (percent / 100))) / 3));

        Assert.InRange(thinned, 0.42 * percent, 0.5 * percent);
    }

    [Fact]
    public void A_stretched_ring_keeps_its_volume() =>
        Gen.Select(Gen.Double[5, 200], Gen.Double[1, 7], Gen.Double[1, 1.3]).Sample((inner, section, by) =>
        {
            var thin = ORingGland.SectionWhenStretched(inner, section, inner * by);
            var (before, after) = (Torus(inner, section), Torus(inner * by, thin));
            Assert.InRange(after, before * (1 - 1e-9), before * (1 + 1e-9));
        });

    /// <summary>Whatever lies within the limits gives nothing beyond the ends that were told.</summary>
    [Fact]
    public void No_ring_and_groove_within_their_limits_go_beyond_what_is_told() => Gen.Select(
        Gen.Enum<GlandKind>(), Gen.Double[10, 80], Gen.Double[1.5, 6], Gen.Double[0.6, 0.95], Gen.Double[-0.03, 0.06], Gen.Double[0, 1].Array[5])
        .Sample((kind, inner, section, share, stretch, at) =>
        {
            var depth = section * share;
            var on = inner * (1 + stretch);
            double[] nominal = kind switch
            {
                GlandKind.RadialOnPiston => [inner, section, on, on + (2 * depth), section * 1.3],
                GlandKind.RadialInBore => [inner, section, on + (2 * depth), on, section * 1.3],
                GlandKind.FacePressedInward => [inner, section, on, depth, section * 1.3],
                _ => [inner, section, on + (2 * section), depth, section * 1.3],
            };
            const double Tolerance = 0.05;
            var spans = nominal.Select(n => new Span(n - Tolerance, n + Tolerance)).ToArray();
            var some = nominal.Zip(at, (n, t) => n - Tolerance + (2 * Tolerance * t)).Select(v => new Span(v, v)).ToArray();

            var told = ORingGland.Fit(spans[0], spans[1], new Gland(kind, spans[2], spans[3], spans[4]));
            var one = ORingGland.Fit(some[0], some[1], new Gland(kind, some[2], some[3], some[4]));

            Within(told.Squeeze, one.Squeeze.Least);
            Within(told.Stretch, one.Stretch.Least);
            Within(told.Fill, one.Fill.Least);
        });

    [Fact]
    public void A_groove_without_room_is_a_bug_of_whoever_asks() => Assert.Throws<ArgumentException>(() => ORingGland.Fit(
        new Span(20, 20), new Span(2, 2), new Gland(GlandKind.RadialOnPiston, new Span(22, 22), new Span(22, 22), new Span(3, 3))));

    [Theory]
    [InlineData(1.85, "too little squeeze: 7.5 %; 10 to 30 % is usual")]
    [InlineData(2.1, "no squeeze: the ring may not touch at all (−5 %; 10 to 30 % is usual)")]
    [InlineData(1.3, "too much squeeze: 35 %; 10 to 30 % is usual")]
    [InlineData(1.6, "usual squeeze: 20 %")]
    public void Squeeze_is_said_in_words(double depth, string sentence) => Assert.Contains(
        Words(20, 2, new Gland(GlandKind.RadialOnPiston, Exactly(20), Exactly(20 + (2 * depth)), Exactly(2.8))), remark => remark.Sentence == sentence);

    [Fact]
    public void Loose_stretched_and_overfilled_rings_are_told()
    {
        Assert.Contains(Words(20, 2, new Gland(GlandKind.RadialOnPiston, Exactly(22), Exactly(25.2), Exactly(2.8))),
            r => r is { IsAgainst: true, Of: "stretch" } && r.Sentence.StartsWith("stretched too far: 10 %", StringComparison.Ordinal));
        Assert.Contains(Words(20, 2, new Gland(GlandKind.RadialOnPiston, Exactly(19), Exactly(22.2), Exactly(2.8))),
            r => r is { IsAgainst: true, Of: "stretch" } && r.Sentence.StartsWith("may lie loose: −5 %", StringComparison.Ordinal));
        Assert.Contains(Words(20, 2, new Gland(GlandKind.RadialOnPiston, Exactly(20), Exactly(23.2), Exactly(1.9))),
            r => r is { IsAgainst: true, Of: "fill" } && r.Sentence.StartsWith("overfilled", StringComparison.Ordinal));
        Assert.Contains(Words(20, 2, new Gland(GlandKind.FacePressedOutward, Exactly(25), Exactly(1.5), Exactly(2.8))),
            r => r is { IsAgainst: true, Of: "stretch" } && r.Sentence.StartsWith("it may not reach the outer wall", StringComparison.Ordinal));
    }

    [Fact]
    public void A_gland_of_the_published_table_is_spoken_against_by_nothing() => Assert.DoesNotContain(
        Words(59, 3.53, new Gland(GlandKind.RadialOnPiston, Exactly(60), Exactly(60 + (2 * 2.87)), Exactly(4.9))), r => r.IsAgainst);

    private static Span Exactly(double mm) => new(mm, mm);

    private static IReadOnlyList<GlandRemark> Words(double inner, double section, Gland gland) =>
        GlandVerdict.Of(gland.Kind, ORingGland.Fit(Exactly(inner), Exactly(section), gland));

    private static double Torus(double inner, double section) => section * section * (inner + section);

    private static void Within(PercentSpan span, double value) => Assert.InRange(value, span.Least - 1e-9, span.Most + 1e-9);
}
