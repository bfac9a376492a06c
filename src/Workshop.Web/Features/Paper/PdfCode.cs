using PdfSharp.Drawing;

namespace Workshop.Web.Features.Paper;

/// <summary>Puts a code on a sheet, in true squares: sharp at any size.</summary>
internal static class PdfCode
{
    public static void Draw(XGraphics sheet, Uri address, double x, double y, double size)
    {
        var code = QrCode.Of(address);
        var square = size / code.Size;
        var path = new XGraphicsPath { FillMode = XFillMode.Winding };
        foreach (var (row, column, length) in code.Runs())
        {
            path.AddRectangle(x + (column * square), y + (row * square), length * square, square);
        }

        sheet.DrawPath(XBrushes.Black, path);
    }
}
