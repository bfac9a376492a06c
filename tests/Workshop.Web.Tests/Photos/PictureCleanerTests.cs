using System.Text;
using SkiaSharp;
using Workshop.Domain.Estimates;
using Workshop.Web.Features.Photos;
using Xunit;

namespace Workshop.Web.Tests.Photos;

public sealed class PictureCleanerTests
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nothing_of_a_jpeg_but_the_picture_is_kept()
    {
        var sent = TestPictures.JpegWithExif(orientation: 1);
        Assert.Contains(TestPictures.Secret, Encoding.Latin1.GetString(sent), StringComparison.Ordinal);
        var kept = (await PictureCleaner.Clean("files[0]", sent, Ct)).Value;

        Assert.Equal(PictureKind.Jpeg, kept.Kind);
        foreach (var picture in new[] { kept.Content, kept.Small })
        {
            Assert.DoesNotContain(TestPictures.Secret, Encoding.Latin1.GetString(picture), StringComparison.Ordinal);
            Assert.DoesNotContain("Exif", Encoding.Latin1.GetString(picture), StringComparison.Ordinal);

            // JFIF, tables, frame, scan (ITU-T T.81, table B.1); no other application segment, no comment.
            Assert.Empty(TestPictures.SegmentsOf(picture).Except<byte>([0xE0, 0xDB, 0xC0, 0xC2, 0xC4, 0xDA, 0xDD]));
        }
    }

    [Fact]
    public async Task Nothing_of_a_png_but_the_picture_is_kept()
    {
        var sent = TestPictures.PngWithText();
        Assert.Contains("tEXt", TestPictures.ChunksOfPng(sent));
        var kept = (await PictureCleaner.Clean("files[0]", sent, Ct)).Value;

        Assert.Equal(PictureKind.Png, kept.Kind);
        Assert.Empty(TestPictures.ChunksOfPng(kept.Content).Except(["IHDR", "sBIT", "sRGB", "PLTE", "IDAT", "IEND"]));
        Assert.DoesNotContain(TestPictures.Secret, Encoding.Latin1.GetString(kept.Content), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_of_a_webp_but_the_picture_is_kept()
    {
        var sent = TestPictures.WebPWithExif();
        Assert.Contains("EXIF", TestPictures.ChunksOfWebP(sent));
        var kept = (await PictureCleaner.Clean("files[0]", sent, Ct)).Value;

        Assert.Equal(PictureKind.WebP, kept.Kind);
        Assert.Empty(TestPictures.ChunksOfWebP(kept.Content).Except(["VP8 ", "VP8L", "VP8X", "ALPH"]));
        Assert.DoesNotContain(TestPictures.Secret, Encoding.Latin1.GetString(kept.Content), StringComparison.Ordinal);
    }

    /// <summary>
    /// Exif 2.3, tag 0x0112, from memory: where row 0 and column 0 of the file are seen. The test picture has a green top, red left
    /// below it and blue right: where these land says whether the turn is right.
    /// </summary>
    [Theory]
    [InlineData(1, "top", "left")]
    [InlineData(2, "top", "right")]
    [InlineData(3, "bottom", "right")]
    [InlineData(4, "bottom", "left")]
    [InlineData(5, "left", "top")]
    [InlineData(6, "right", "top")]
    [InlineData(7, "right", "bottom")]
    [InlineData(8, "left", "bottom")]
    public async Task A_picture_is_turned_as_it_was_held(int orientation, string green, string red)
    {
        var kept = (await PictureCleaner.Clean("files[0]", TestPictures.JpegWithExif((ushort)orientation), Ct)).Value;

        Assert.Equal(orientation <= 4 ? (400, 200) : (200, 400), (kept.Width, kept.Height));
        using var bitmap = SKBitmap.Decode(kept.Content);
        Assert.True(At(bitmap, green, null) is { Green: > 200, Red: < 60, Blue: < 60 });
        Assert.True(At(bitmap, Opposite(green), red) is { Red: > 200, Green: < 60, Blue: < 60 });
        Assert.True(At(bitmap, Opposite(green), Opposite(red)) is { Blue: > 200, Green: < 60, Red: < 60 });
    }

    [Theory]
    [InlineData(5000, 2500, 2000, 1000)]
    [InlineData(30, 20, 30, 20)]
    public async Task A_large_picture_is_made_smaller_and_a_small_one_is_left(int width, int height, int keptWidth, int keptHeight)
    {
        var kept = (await PictureCleaner.Clean("files[0]", TestPictures.Plain(SKEncodedImageFormat.Jpeg, width, height), Ct)).Value;

        Assert.Equal((keptWidth, keptHeight), (kept.Width, kept.Height));
        using var small = SKBitmap.Decode(kept.Small);
        Assert.True(Math.Max(small.Width, small.Height) <= PictureRules.SmallSide);
    }

    [Fact]
    public async Task What_is_no_picture_damaged_or_claims_to_be_huge_is_refused()
    {
        var jpeg = TestPictures.Plain(SKEncodedImageFormat.Jpeg);

        Assert.Equal("files[0] is no picture: JPEG, PNG and WebP are allowed, whatever the file is called.", await Refusal("GIF89a"u8.ToArray()));
        Assert.Equal("files[0] is no picture: JPEG, PNG and WebP are allowed, whatever the file is called.", await Refusal("<svg xmlns='http://www.w3.org/2000/svg'/>"u8.ToArray()));
        Assert.Equal("files[0] begins as Jpeg but cannot be read: the file is damaged.", await Refusal([0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3]));
        Assert.Equal("files[0] begins as Jpeg but ends in the middle, or is damaged.", await Refusal(jpeg[..(jpeg.Length / 2)]));
        Assert.Equal("files[0] is 60000 x 60000 pixels: at most 50000000 pixels in all are allowed; make it smaller first.", await Refusal(TestPictures.PngThatClaims(60_000, 60_000)));
    }

    private static async Task<string?> Refusal(byte[] content) => (await PictureCleaner.Clean("files[0]", content, Ct)).Problem?.Sentence;

    private static string Opposite(string side) => side switch { "top" => "bottom", "bottom" => "top", "left" => "right", _ => "left" };

    /// <summary>A pixel near the middle of a side, towards another side where one is named.</summary>
    private static SKColor At(SKBitmap bitmap, string side, string? towards)
    {
        var (x, y) = (bitmap.Width / 2, bitmap.Height / 2);
        foreach (var (name, depth) in new[] { (side, 10), (towards, 4) })
        {
            (x, y) = name switch
            {
                "left" => (bitmap.Width / depth, y),
                "right" => (bitmap.Width - 1 - (bitmap.Width / depth), y),
                "top" => (x, bitmap.Height / depth),
                "bottom" => (x, bitmap.Height - 1 - (bitmap.Height / depth)),
                _ => (x, y),
            };
        }

        return bitmap.GetPixel(x, y);
    }
}
