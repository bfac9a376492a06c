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
        Gen.Select(Gen.Int[1, 20_000], Gen.Int[1, 20_000]).Sample((width, height) =>
        {
            var (toWidth, toHeight) = PictureRules.Fit(width, height, PictureRules.LargestSide);

            Assert.InRange(Math.Max(toWidth, toHeight), 1, Math.Min(Math.Max(width, height), PictureRules.LargestSide));
            Assert.InRange(Math.Min(toWidth, toHeight), 1, Math.Min(width, height));
            Assert.True(Math.Abs(((double)toWidth / toHeight) - ((double)width / height)) <= (double)width / height * 0.6 / Math.Min(toWidth, toHeight));
        });
}
