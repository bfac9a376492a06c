using System.Globalization;
using System.Text.RegularExpressions;
using PdfSharp.Drawing;
using Workshop.Web.Features.Shared.Drawings;

namespace Workshop.Web.Features.Paper;

/// <summary>Puts a clearance strip on a sheet: the paths of the drawing on the page, in black, as wide as there is room.</summary>
internal static partial class PdfStrip
{
    private const double TextSize = 12;

    public static double HeightOf(StripGeometry strip, double width) => (double)strip.Height * ScaleOf(width);

    public static void Draw(XGraphics sheet, StripGeometry strip, double x, double y, double width)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(strip);
        var scale = ScaleOf(width);
        var text = new XFont(PaperFonts.Family, TextSize * scale);
        var fine = new XPen(XColors.Gray, 0.3);
        XPoint At(double left, double top) => new(x + (left * scale), y + (top * scale));

        sheet.DrawLine(fine, At((double)strip.Left, (double)strip.AxisY), At((double)StripGeometry.Width, (double)strip.AxisY));
        foreach (var bar in strip.Bars)
        {
            var corners = Corners(bar.Path).Select(p => At(p.X, p.Y)).ToArray();
            if (bar.Predicted)
            {
                sheet.DrawPolygon(new XPen(XColors.Black, 0.8), corners);
            }
            else
            {
                sheet.DrawPolygon(XBrushes.DimGray, corners, XFillMode.Winding);
            }

            if (strip.Named)
            {
                sheet.DrawString(bar.Name, text, XBrushes.Black, At(0, (double)bar.TextY));
            }
        }

        foreach (var stop in new[] { strip.LowerStop, strip.UpperStop })
        {
            sheet.DrawLines(new XPen(XColors.Black, 2.5 * scale), Corners(stop).Select(p => At(p.X, p.Y)).ToArray());
        }

        var dashed = new XPen(XColors.Black, 1.5 * scale) { DashPattern = [3, 2] };
        sheet.DrawLine(dashed, At((double)strip.SetToX, 0), At((double)strip.SetToX, (double)strip.AxisY));
        Figure(strip.LowerText, strip.LowerX);
        Figure(strip.UpperText, strip.UpperX);
        if (strip.SetToTextFits)
        {
            Figure(strip.SetToText, strip.SetToX);
        }

        void Figure(string figure, decimal middle) => sheet.DrawString(
            figure, text, XBrushes.Black, At((double)middle, (double)strip.TextY), new XStringFormat { Alignment = XStringAlignment.Center, LineAlignment = XLineAlignment.BaseLine });
    }

    /// <summary>The corners of a path of straight lines, as the drawing writes it: M, L, H, V and Z, all absolute.</summary>
    internal static IReadOnlyList<(double X, double Y)> Corners(string path)
    {
        var corners = new List<(double X, double Y)>();
        foreach (Match step in Step().Matches(path))
        {
            var figures = step.Groups[2].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Select(f => double.Parse(f, CultureInfo.InvariantCulture)).ToArray();
            switch ((step.Groups[1].Value, figures))
            {
                case ("M" or "L", [var x, var y]):
                    corners.Add((x, y));
                    break;
                case ("H", [var x]):
                    corners.Add((x, corners[^1].Y));
                    break;
                case ("V", [var y]):
                    corners.Add((corners[^1].X, y));
                    break;
                case ("Z", []):
                    break;
                default:
                    throw new InvalidOperationException($"\"{step.Value}\" of a strip's path is not drawn on paper.");
            }
        }

        return corners;
    }

    private static double ScaleOf(double width) => width / (double)StripGeometry.Width;

    [GeneratedRegex("([A-Za-z])([^A-Za-z]*)")]
    private static partial Regex Step();
}
