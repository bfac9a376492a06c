using CsCheck;
using Workshop.Domain.Consumables;

namespace Workshop.Domain.Tests.Consumables;

public class SizeTests
{
    [Theory]
    [InlineData("25 x 2.5", SizeOf.ORing, 25, 2.5, null)]
    [InlineData("25x2,5", SizeOf.ORing, 25, 2.5, null)]
    [InlineData(" 25 × 2.5 mm ", SizeOf.ORing, 25, 2.5, null)]
    [InlineData("25 x 2.5 groove", SizeOf.Groove, 25, 2.5, null)]
    [InlineData("14x18", SizeOf.SealingRing, 14, 18, null)]
    [InlineData("14 x 18 x 1.5", SizeOf.SealingRing, 14, 18, 1.5)]
    [InlineData("14 x 18 x 1,5 mm", SizeOf.SealingRing, 14, 18, 1.5)]
    [InlineData("8x11,5", SizeOf.SealingRing, 8, 11.5, null)]
    [InlineData("DIN 7603 A 14x18", SizeOf.SealingRing, 14, 18, null)]
    [InlineData("0.984 x 0.139 in", SizeOf.ORing, 24.9936, 3.5306, null)]
    public void A_size_is_read_as_people_write_it(string text, SizeOf of, double first, double second, double? third)
    {
        Assert.True(SizeQuestion.TryParse(text, asGroove: false, out var read));
        Assert.Equal((of, (decimal)first, (decimal)second, (decimal?)third), (read.Of, read.FirstMm, read.SecondMm, read.ThirdMm));
    }

    [Theory]
    [InlineData("AS568-214")]
    [InlineData("as568 214")]
    [InlineData("AS 568-214")]
    [InlineData("AS568A-214")]
    [InlineData("2-214")]
    [InlineData("-214")]
    public void A_size_number_is_one_code_however_it_is_written(string text)
    {
        Assert.True(SizeQuestion.TryParse(text, asGroove: false, out var read));
        Assert.Equal("AS568-214", read.Code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("25")]
    [InlineData("14,18")]
    [InlineData("25 x")]
    [InlineData("25 x 0")]
    [InlineData("25 x 25")]
    [InlineData("18 x 14 x 1.5")]
    [InlineData("14 x 18 groove")]
    [InlineData("14 x 18 x 1.5 x 2")]
    [InlineData("9999 x 2")]
    [InlineData("1.2.3 x 4")]
    [InlineData("-5 x 2")]
    [InlineData("fourteen")]
    public void What_is_no_size_is_not_guessed(string text) => Assert.False(SizeQuestion.TryParse(text, asGroove: false, out _));

    [Fact]
    public void A_size_that_is_written_is_read_again() =>
        Gen.Select(Gen.Decimal[3, 200], Gen.Decimal[1, 2.5m]).Sample((inner, section) =>
        {
            var size = SealSize.ORing(decimal.Round(inner, 2), decimal.Round(section, 2));
            Assert.True(SizeQuestion.TryParse(size.ToString(), false, out var read));
            Assert.True(SizeQuestion.TryParse(size.ToString().Replace('.', ','), false, out var withComma));
            Assert.Equal((size.InnerMm, size.SectionMm), (read.FirstMm, read.SecondMm));
            Assert.Equal(read, withComma);
        });

    /// <summary>Against a plain statement: all within the tolerance, none beyond, in order of the largest difference.</summary>
    [Fact]
    public void The_search_finds_what_is_within_and_nothing_else() =>
        Gen.Select(Rings.Array[0, 40], Gen.Decimal[5, 30], Gen.Decimal[1, 4], Gen.Decimal[0, 3]).Sample((rings, inner, section, tolerance) =>
        {
            var found = SizeSearch.Rank(new SizeQuestion(SizeOf.ORing, null, inner, section), tolerance, rings, r => r);
            var expected = rings.Where(r => Math.Abs(r.InnerMm - inner) <= tolerance && Math.Abs(r.SectionMm - section) <= tolerance);

            Assert.Equal(expected.Order(Comparer<SealSize>.Create((a, b) => string.CompareOrdinal(a.ToString(), b.ToString()))).Select(r => r.ToString()),
                found.Select(f => f.Item.ToString()).Order(StringComparer.Ordinal));
            Assert.Equal(found.Select(f => f.FarthestOffMm).Order(), found.Select(f => f.FarthestOffMm));
        });

    [Fact]
    public void For_a_groove_what_sits_well_stands_before_what_does_not_and_a_nearer_section_first() =>
        Gen.Select(Rings.Array[0, 40], Gen.Decimal[5, 30], Gen.Decimal[1, 4]).Sample((rings, groove, section) =>
        {
            var found = SizeSearch.Rank(new SizeQuestion(SizeOf.Groove, null, groove, section), 1, rings, r => r);

            Assert.Equal(found.Select(f => f.SitsWell).OrderDescending(), found.Select(f => f.SitsWell));
            foreach (var alike in found.GroupBy(f => f.SitsWell))
            {
                Assert.Equal(alike.Select(f => Math.Abs(f.SectionOffMm!.Value)).Order(), alike.Select(f => Math.Abs(f.SectionOffMm!.Value)));
            }

            Assert.All(rings.Where(r => r.InnerMm <= groove && Stretch.Percent(r.InnerMm, groove) <= 5 && Math.Abs(r.SectionMm - section) <= 1),
                r => Assert.Contains(found, f => ReferenceEquals(f.Item, r)));
        });

    /// <summary>Exact: 25 on a ring of 24.6 is 0.4 / 24.6.</summary>
    [Fact]
    public void Stretch_and_difference_are_told_with_their_sign()
    {
        var match = Assert.Single(SizeSearch.Rank(
            new SizeQuestion(SizeOf.Groove, null, 25, 2.5m), 0.5m, [SealSize.ORing(24.6m, 2.45m)], r => r));

        Assert.Equal((-0.4m, -0.05m), (match.InnerOffMm, match.SectionOffMm));
        Assert.Equal(0.4m / 24.6m * 100, match.StretchPercent);
        Assert.True(match.SitsWell);
    }

    [Fact]
    public void A_ring_of_another_section_than_the_groove_is_made_for_comes_last_and_says_so()
    {
        var found = SizeSearch.Rank(
            new SizeQuestion(SizeOf.Groove, null, 25, 2.5m), 0.5m, [SealSize.ORing(25, 2), SealSize.ORing(25, 3), SealSize.ORing(25, 2.5m)], r => r);

        Assert.Equal(
            [
                ("25 x 2.5", true, "lies on it, not stretched"),
                ("25 x 2", false, "section 0.5 mm too thin for the groove: it may not seal; lies on it, not stretched"),
                ("25 x 3", false, "section 0.5 mm too thick for the groove: it may be pressed too far or not go in; lies on it, not stretched"),
            ],
            found.Select(f => (f.Size.ToString(), f.SitsWell, f.Fit(SizeOf.Groove))));
    }

    /// <summary>
    /// The steps of ISO 3601-1, from memory. SAE AS568, from memory too, gives 0.003, 0.003, 0.004, 0.005 and 0.006 in, which is the same but at 2.62 mm, where
    /// it is 0.08 mm.
    /// </summary>
    [Theory]
    [InlineData(1.78, 0.08)]
    [InlineData(2.62, 0.09)]
    [InlineData(3.53, 0.10)]
    [InlineData(5.33, 0.13)]
    [InlineData(6.99, 0.15)]
    public void The_section_may_be_off_as_the_size_table_says(double section, double tolerance) =>
        Assert.Equal((decimal)tolerance, SectionTolerance.Mm((decimal)section));

    [Fact]
    public void A_near_size_of_the_other_series_is_told_with_its_difference()
    {
        var (inch, metric) = (SealSize.ORing(24.99m, 3.53m), SealSize.ORing(25, 3.55m));

        Assert.Equal(EquivalenceKind.NearSize, Equivalence.Between(inch, "NBR", metric, "NBR"));
        Assert.Equal("inner +0.01 mm, section +0.02 mm", Equivalence.Difference(inch, metric));
        Assert.Equal("inner −0.01 mm, section −0.02 mm", Equivalence.Difference(metric, inch));
        Assert.Equal("the same size", Equivalence.Difference(inch, inch));
        Assert.Equal(EquivalenceKind.SameSizeOtherMaterial, Equivalence.Between(inch, "NBR", inch, "FKM"));
        Assert.Equal(EquivalenceKind.SameSize, Equivalence.Between(inch, "NBR", inch, "nbr"));
        Assert.Null(Equivalence.Between(inch, null, SealSize.ORing(24.99m, 2.62m), null));
        Assert.Null(Equivalence.Between(SealSize.Ring(14, 18, 1.5m), null, SealSize.Ring(14, 20, 1.5m), null));
    }

    [Fact]
    public void Near_is_said_from_both_sides_alike() => Gen.Select(Rings, Rings).Sample((one, other) =>
        Assert.Equal(Equivalence.Between(one, null, other, null), Equivalence.Between(other, null, one, null)));

    private static readonly Gen<SealSize> Rings = Gen.Select(Gen.Decimal[5, 30], Gen.Decimal[1, 4])
        .Select((inner, section) => SealSize.ORing(decimal.Round(inner, 2), decimal.Round(section, 2)));
}
