using SkiaSharp;

namespace Workshop.Web.Data.Seeding;

/// <summary>A picture for the demo, drawn and not taken: a brake disc from its edge between two worn pads.</summary>
internal static class DemoPicture
{
    private const int Width = 1200;
    private const int Height = 800;

    public static byte[] Draw()
    {
        using var bitmap = new SKBitmap(new SKImageInfo(Width, Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(new SKColor(0xE9, 0xE6, 0xDF));
        Box(canvas, 560, 60, 80, 680, 0xB4B7BA);
        for (var y = 110; y < 720; y += 60)
        {
            Box(canvas, 585, y, 30, 22, 0x8A8E92);
        }

        // Steel backs are sound; of the linings little is left, of the left one less.
        Box(canvas, 400, 220, 70, 360, 0x4A4E52);
        Box(canvas, 530, 230, 18, 340, 0x7A5A3C);
        Box(canvas, 730, 220, 70, 360, 0x4A4E52);
        Box(canvas, 652, 230, 30, 340, 0x7A5A3C);
        using var stroke = new SKPaint { Color = new SKColor(0x0B, 0x5C, 0x8A), Style = SKPaintStyle.Stroke, StrokeWidth = 6, IsAntialias = true };
        canvas.DrawCircle(539, 400, 90, stroke);
        canvas.Flush();
        using var pixels = bitmap.PeekPixels();
        using var data = pixels.Encode(SKEncodedImageFormat.Png, 100) ?? throw new InvalidOperationException("The demo's picture cannot be written.");
        return data.ToArray();
    }

    private static void Box(SKCanvas canvas, float x, float y, float width, float height, uint colour)
    {
        using var fill = new SKPaint { Color = new SKColor(0xFF00_0000 | colour), Style = SKPaintStyle.Fill };
        using var edge = new SKPaint { Color = SKColors.Black, Style = SKPaintStyle.Stroke, StrokeWidth = 3, IsAntialias = true };
        canvas.DrawRect(x, y, width, height, fill);
        canvas.DrawRect(x, y, width, height, edge);
    }
}
