using SkiaSharp;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Features.Photos;

/// <summary>A picture as it is kept: upright, in sRGB, of a sensible size, and nothing but the picture.</summary>
internal sealed record CleanPicture(PictureKind Kind, byte[] Content, byte[] Small, int Width, int Height);

/// <summary>
/// Makes a picture anew from its pixels, so that where and by what it was taken, comments, previews and whatever else a file can
/// carry stays behind. What claims to be too large is refused by its header, before a pixel is unpacked.
/// </summary>
internal static class PictureCleaner
{
    private const int Quality = 85;
    private const int SmallQuality = 75;

    /// <summary>A drawing stays crisp as PNG; a photograph sent as PNG would fill the database.</summary>
    private const int LargestPng = 2_000_000;

    private const int AtOnce = 2;

    /// <summary>Unpacked pictures are large: only so many at a time in one copy of the service.</summary>
    private static readonly SemaphoreSlim Bench = new(AtOnce);

    /// <param name="field">What a refusal names.</param>
    /// <param name="content">As it was sent.</param>
    public static async Task<Outcome<CleanPicture>> Clean(string field, byte[] content, CancellationToken ct)
    {
        await Bench.WaitAsync(ct);
        try
        {
            return Clean(field, content);
        }
        finally
        {
            Bench.Release();
        }
    }

    private static Outcome<CleanPicture> Clean(string field, byte[] content)
    {
        if (PictureRules.KindOf(content) is not { } kind)
        {
            return Wrong(field, "is no picture: JPEG, PNG and WebP are allowed, whatever the file is called");
        }

        using var data = SKData.CreateCopy(content);
        using var codec = SKCodec.Create(data);
        if (codec is null || codec.EncodedFormat != FormatOf(kind))
        {
            return Wrong(field, $"begins as {kind} but cannot be read: the file is damaged");
        }

        var info = codec.Info;
        if (info.Width < 1 || info.Height < 1 || (long)info.Width * info.Height > PictureRules.MostPixels)
        {
            return Wrong(field, FormattableString.Invariant(
                $"is {info.Width} x {info.Height} pixels: at most {PictureRules.MostPixels} pixels in all are allowed; make it smaller first"));
        }

        using var pixels = Unpack(codec);
        if (pixels is null)
        {
            return Wrong(field, $"begins as {kind} but ends in the middle, or is damaged");
        }

        using var upright = Upright(pixels, codec.EncodedOrigin, PictureRules.LargestSide, ground: null);
        using var small = Upright(pixels, codec.EncodedOrigin, PictureRules.SmallSide, SKColors.White);
        var (kept, bytes) = Pack(upright, kind);
        return new CleanPicture(kept, bytes, Encode(small, SKEncodedImageFormat.Jpeg, SmallQuality), upright.Width, upright.Height);
    }

    /// <summary>Decodes into sRGB, and as small as the format allows at once; nothing where the data is damaged.</summary>
    private static SKBitmap? Unpack(SKCodec codec)
    {
        var info = codec.Info;
        var scale = Math.Min(1f, 2f * PictureRules.LargestSide / Math.Max(info.Width, info.Height));
        var size = codec.GetScaledDimensions(scale);
        var alpha = info.AlphaType == SKAlphaType.Opaque ? SKAlphaType.Opaque : SKAlphaType.Premul;
        var bitmap = new SKBitmap();
        if (bitmap.TryAllocPixels(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, alpha, SKColorSpace.CreateSrgb()))
            && codec.GetPixels(bitmap.Info, bitmap.GetPixels()) == SKCodecResult.Success)
        {
            return bitmap;
        }

        bitmap.Dispose();
        return null;
    }

    private static SKBitmap Upright(SKBitmap pixels, SKEncodedOrigin origin, int largestSide, SKColor? ground)
    {
        var turned = origin >= SKEncodedOrigin.LeftTop;
        var (width, height) = turned ? (pixels.Height, pixels.Width) : (pixels.Width, pixels.Height);
        var (toWidth, toHeight) = PictureRules.Fit(width, height, largestSide);

        // Without a colour space: a profile would be written into the file.
        var made = new SKBitmap(new SKImageInfo(toWidth, toHeight, SKColorType.Rgba8888, ground is null ? pixels.AlphaType : SKAlphaType.Opaque));
        using var canvas = new SKCanvas(made);
        canvas.Clear(ground ?? SKColors.Transparent);
        canvas.Scale((float)toWidth / width, (float)toHeight / height);
        canvas.Concat(Turn(origin, width, height));
        using var image = SKImage.FromBitmap(pixels);
        canvas.DrawImage(image, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        canvas.Flush();
        return made;
    }

    /// <summary>From the file's rows and columns to the upright picture (Exif 2.3, tag 0x0112), which is that wide and high.</summary>
    private static SKMatrix Turn(SKEncodedOrigin origin, float width, float height) => origin switch
    {
        SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, width, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, width, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new SKMatrix(0, -1, width, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, width, -1, 0, height, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, height, 0, 0, 1),
        _ => SKMatrix.Identity,
    };

    private static (PictureKind Kind, byte[] Content) Pack(SKBitmap picture, PictureKind kind)
    {
        var bytes = Encode(picture, FormatOf(kind), Quality);
        if (kind != PictureKind.Png || bytes.Length <= LargestPng)
        {
            return (kind, bytes);
        }

        return picture.AlphaType == SKAlphaType.Opaque
            ? (PictureKind.Jpeg, Encode(picture, SKEncodedImageFormat.Jpeg, Quality))
            : (PictureKind.WebP, Encode(picture, SKEncodedImageFormat.Webp, Quality));
    }

    private static byte[] Encode(SKBitmap picture, SKEncodedImageFormat format, int quality)
    {
        using var pixmap = picture.PeekPixels();
        using var data = pixmap.Encode(format, quality) ?? throw new InvalidOperationException($"A picture of {picture.Width} x {picture.Height} cannot be written as {format}.");
        return data.ToArray();
    }

    private static SKEncodedImageFormat FormatOf(PictureKind kind) => kind switch
    {
        PictureKind.Jpeg => SKEncodedImageFormat.Jpeg,
        PictureKind.Png => SKEncodedImageFormat.Png,
        PictureKind.WebP => SKEncodedImageFormat.Webp,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    private static Problem Wrong(string field, string what) => Problem.Impossible("picture-refused", field, $"{field} {what}.");
}
