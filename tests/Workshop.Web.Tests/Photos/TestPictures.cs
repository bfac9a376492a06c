using System.Buffers.Binary;
using System.Net.Http.Headers;
using System.Text;
using SkiaSharp;

namespace Workshop.Web.Tests.Photos;

/// <summary>Pictures made for tests, with what a telephone writes beside the pixels.</summary>
internal static class TestPictures
{
    public const string Secret = "GPS-48.2082N-16.3738E";

    /// <summary>Left half red, right half blue, and a green strip along the top.</summary>
    public static byte[] Plain(SKEncodedImageFormat format, int width = 400, int height = 200)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.Red);
        using var blue = new SKPaint { Color = SKColors.Blue };
        canvas.DrawRect(width / 2f, 0, width / 2f, height, blue);
        using var green = new SKPaint { Color = new SKColor(0, 255, 0) };
        canvas.DrawRect(0, 0, width, height / 4f, green);
        canvas.Flush();
        using var pixels = bitmap.PeekPixels();
        using var data = pixels.Encode(format, 95)!;
        return data.ToArray();
    }

    /// <summary>A JPEG with an Exif segment of its own: an orientation, a position in the GPS directory, a comment segment.</summary>
    public static byte[] JpegWithExif(ushort orientation, int width = 400, int height = 200)
    {
        var jpeg = Plain(SKEncodedImageFormat.Jpeg, width, height);
        var exif = Segment(0xE1, [.. "Exif\0\0"u8, .. Tiff(orientation)]);
        var comment = Segment(0xFE, Encoding.ASCII.GetBytes(Secret));
        return [.. jpeg.AsSpan(0, 2), .. exif, .. comment, .. jpeg.AsSpan(2)];
    }

    /// <summary>A PNG with a text chunk and an eXIf chunk.</summary>
    public static byte[] PngWithText()
    {
        var png = Plain(SKEncodedImageFormat.Png);
        const int afterHeader = 33;
        return
        [
            .. png.AsSpan(0, afterHeader), .. Chunk("tEXt", [.. "Comment\0"u8, .. Encoding.ASCII.GetBytes(Secret)]), .. Chunk("eXIf", Tiff(1)),
            .. png.AsSpan(afterHeader),
        ];
    }

    /// <summary>A WebP in its extended form (RFC 9649, 2.7) with EXIF and XMP chunks.</summary>
    public static byte[] WebPWithExif(int width = 400, int height = 200)
    {
        var webP = Plain(SKEncodedImageFormat.Webp, width, height);
        var image = webP.AsSpan(12).ToArray();
        var size = new byte[6];
        BinaryPrimitives.WriteUInt16LittleEndian(size, (ushort)(width - 1));
        BinaryPrimitives.WriteUInt16LittleEndian(size.AsSpan(3), (ushort)(height - 1));
        byte[] body =
        [
            .. "WEBP"u8, .. Riff("VP8X", [0b0000_1100, 0, 0, 0, .. size]), .. image, .. Riff("EXIF", Tiff(1)), .. Riff("XMP ", Encoding.ASCII.GetBytes(Secret)),
        ];
        var length = new byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(length, (uint)body.Length);
        return [.. "RIFF"u8, .. length, .. body];
    }

    /// <summary>A PNG of a few bytes whose header claims to be huge.</summary>
    public static byte[] PngThatClaims(uint width, uint height)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteUInt32BigEndian(header, width);
        BinaryPrimitives.WriteUInt32BigEndian(header.AsSpan(4), height);
        (header[8], header[9]) = (8, 2);
        return [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, .. Chunk("IHDR", header), .. Chunk("IDAT", [0x78, 0x9C, 3, 0, 0, 0, 0, 1]), .. Chunk("IEND", [])];
    }

    public static MultipartFormDataContent Form(params (string Name, byte[] Content)[] files)
    {
        var form = new MultipartFormDataContent();
        foreach (var (name, content) in files)
        {
            var part = new ByteArrayContent(content);
            part.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
            form.Add(part, "files", name);
        }

        return form;
    }

    /// <summary>The marker segments of a JPEG before its data, by their second byte.</summary>
    public static IReadOnlyList<byte> SegmentsOf(byte[] jpeg)
    {
        var markers = new List<byte>();
        for (var at = 2; at + 4 <= jpeg.Length && jpeg[at] == 0xFF; at += 2 + BinaryPrimitives.ReadUInt16BigEndian(jpeg.AsSpan(at + 2)))
        {
            markers.Add(jpeg[at + 1]);
            if (jpeg[at + 1] == 0xDA)
            {
                break;
            }
        }

        return markers;
    }

    /// <summary>The names of the chunks of a PNG.</summary>
    public static IReadOnlyList<string> ChunksOfPng(byte[] png)
    {
        var names = new List<string>();
        for (var at = 8; at + 8 <= png.Length; at += 12 + (int)BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(at)))
        {
            names.Add(Encoding.ASCII.GetString(png, at + 4, 4));
        }

        return names;
    }

    /// <summary>The names of the chunks of a WebP.</summary>
    public static IReadOnlyList<string> ChunksOfWebP(byte[] webP)
    {
        var names = new List<string>();
        for (var at = 12; at + 8 <= webP.Length;)
        {
            names.Add(Encoding.ASCII.GetString(webP, at, 4));
            var length = (int)BinaryPrimitives.ReadUInt32LittleEndian(webP.AsSpan(at + 4));
            at += 8 + length + (length % 2);
        }

        return names;
    }

    /// <summary>Little-endian TIFF: orientation, and a GPS directory whose reference holds the secret (Exif 2.3, 4.6).</summary>
    private static byte[] Tiff(ushort orientation)
    {
        var text = Encoding.ASCII.GetBytes(Secret + "\0");
        byte[] head = [.. "II"u8, 42, 0, 8, 0, 0, 0, 2, 0];
        return
        [
            .. head, .. Entry(0x0112, 3, 1, orientation), .. Entry(0x8825, 4, 1, 38), 0, 0, 0, 0,
            1, 0, .. Entry(0x001B, 2, (uint)text.Length, 56), 0, 0, 0, 0, .. text,
        ];

        static byte[] Entry(ushort tag, ushort type, uint count, uint value)
        {
            var entry = new byte[12];
            BinaryPrimitives.WriteUInt16LittleEndian(entry, tag);
            BinaryPrimitives.WriteUInt16LittleEndian(entry.AsSpan(2), type);
            BinaryPrimitives.WriteUInt32LittleEndian(entry.AsSpan(4), count);
            BinaryPrimitives.WriteUInt32LittleEndian(entry.AsSpan(8), value);
            return entry;
        }
    }

    private static byte[] Segment(byte marker, byte[] content)
    {
        var length = new byte[2];
        BinaryPrimitives.WriteUInt16BigEndian(length, (ushort)(content.Length + 2));
        return [0xFF, marker, .. length, .. content];
    }

    private static byte[] Riff(string name, byte[] content)
    {
        var length = new byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(length, (uint)content.Length);
        return content.Length % 2 == 0 ? [.. Encoding.ASCII.GetBytes(name), .. length, .. content] : [.. Encoding.ASCII.GetBytes(name), .. length, .. content, 0];
    }

    private static byte[] Chunk(string name, byte[] content)
    {
        byte[] named = [.. Encoding.ASCII.GetBytes(name), .. content];
        var (length, sum) = (new byte[4], new byte[4]);
        BinaryPrimitives.WriteUInt32BigEndian(length, (uint)content.Length);
        BinaryPrimitives.WriteUInt32BigEndian(sum, Crc(named));
        return [.. length, .. named, .. sum];
    }

    /// <summary>CRC-32 as PNG's annex D has it.</summary>
    private static uint Crc(byte[] bytes)
    {
        var crc = 0xFFFF_FFFFu;
        foreach (var value in bytes)
        {
            crc ^= value;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) == 1 ? 0xEDB8_8320u ^ (crc >> 1) : crc >> 1;
            }
        }

        return crc ^ 0xFFFF_FFFFu;
    }
}
