namespace Workshop.Domain.Estimates;

/// <summary>The kinds of picture that are taken, told by what stands in the file.</summary>
public enum PictureKind
{
    Jpeg,
    Png,
    WebP,
}

/// <summary>What a picture may be, before anybody looks into it, and how it is kept.</summary>
public static class PictureRules
{
    /// <summary>Of one file as it is sent.</summary>
    public const int LargestBytes = 12_000_000;

    /// <summary>Files of one send.</summary>
    public const int MostAtOnce = 8;

    /// <summary>Width times height, asked of the file's header before a pixel is unpacked: a small file can claim to be huge.</summary>
    public const int MostPixels = 50_000_000;

    /// <summary>The longer side as it is kept, in pixels.</summary>
    public const int LargestSide = 2000;

    /// <summary>The longer side on a page, in pixels.</summary>
    public const int SmallSide = 320;

    private static ReadOnlySpan<byte> JpegSignature => [0xFF, 0xD8, 0xFF];

    private static ReadOnlySpan<byte> PngSignature => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>
    /// The kind by the first bytes (JPEG: ITU-T T.81 B.1.1.3; PNG: W3C PNG 5.2; WebP: RFC 9649, 2.4), whatever name or type came with
    /// it. Nothing where it is none of them.
    /// </summary>
    public static PictureKind? KindOf(ReadOnlySpan<byte> content) =>
        content.StartsWith(JpegSignature) ? PictureKind.Jpeg
        : content.StartsWith(PngSignature) ? PictureKind.Png
        : content.Length >= 12 && content.StartsWith("RIFF"u8) && content[8..].StartsWith("WEBP"u8) ? PictureKind.WebP
        : null;

    /// <summary>"image/jpeg", "image/png", "image/webp".</summary>
    public static string MediaType(this PictureKind kind) => kind switch
    {
        PictureKind.Jpeg => "image/jpeg",
        PictureKind.Png => "image/png",
        PictureKind.WebP => "image/webp",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>The size in which a picture is kept: at most <paramref name="largestSide"/> on its longer side, never larger than it was.</summary>
    public static (int Width, int Height) Fit(int width, int height, int largestSide)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        var longer = Math.Max(width, height);
        return longer <= largestSide
            ? (width, height)
            : (Scaled(width), Scaled(height));

        int Scaled(int side) => Math.Max(1, (int)Math.Round((double)side * largestSide / longer));
    }
}
