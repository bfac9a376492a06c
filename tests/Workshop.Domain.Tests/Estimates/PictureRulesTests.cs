using CsCheck;
using Workshop.Domain.Estimates;

namespace Workshop.Domain.Tests.Estimates;

public class PictureRulesTests
{
    /// <summary>Signatures: JPEG, ITU-T T.81; PNG, W3C PNG 5.2; WebP, RFC 9649. From memory.</summary>
    [Theory]
    [InlineData("FFD8FFE000104A464946", PictureKind.Jpeg)]
    [InlineData("89504E470D0A1A0A0000000D49484452", PictureKind.Png)]
    [InlineData("524946462400000057454250565038", PictureKind.WebP)]
    [InlineData("474946383961", null)]
    [InlineData("524946462400000057415645", null)]
    [InlineData("3C7376673E", null)]
    [InlineData("89504E470D0A", null)]
    [InlineData("", null)]
    public void A_kind_is_told_by_the_first_bytes(string hex, PictureKind? kind) =>
        Assert.Equal(kind, PictureRules.KindOf(Convert.FromHexString(hex)));

    [Fact]
    public void A_picture_is_kept_no_larger_than_it_was_and_in_its_shape() =>
        Gen.Select(Gen.Int[1, 20_000], Gen.Int[1, 20_000]).Sample(KeepsItsShape);

    [Fact]
    public void A_sliver_keeps_a_pixel_of_its_thin_side()
    {
        Assert.Equal((2000, 1), PictureRules.Fit(8562, 1, PictureRules.LargestSide));
        KeepsItsShape(8562, 1);
    }

    /// <summary>Each side within half a pixel of its share, and at least the one pixel that a picture must have.</summary>
    private static void KeepsItsShape(int width, int height)
    {
        var (toWidth, toHeight) = PictureRules.Fit(width, height, PictureRules.LargestSide);
        var scale = Math.Min(1.0, (double)PictureRules.LargestSide / Math.Max(width, height));

        Assert.InRange(Math.Max(toWidth, toHeight), 1, Math.Min(Math.Max(width, height), PictureRules.LargestSide));
        Assert.InRange(toWidth, 1, width);
        Assert.InRange(toHeight, 1, height);
        Assert.InRange(toWidth - Math.Max(1, width * scale), -0.5001, 0.5001);
        Assert.InRange(toHeight - Math.Max(1, height * scale), -0.5001, 0.5001);
    }
}
