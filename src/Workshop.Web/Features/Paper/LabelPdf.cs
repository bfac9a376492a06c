using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Workshop.Web.Features.Paper;

/// <summary>Draws labels where their sheets have them: the code of squares at the left, words beside it, as large as they fit.</summary>
internal static class LabelPdf
{
    private const double PointsPerMm = 72 / 25.4;
    private const double Edge = 2 * PointsPerMm;
    private const double LargestTitle = 15;
    private const double SmallestTitle = 4;

    public static byte[] Draw(LabelSheets sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        using var pdf = new PdfDocument();
        pdf.Info.Title = $"Labels, {sheets.Stock.Name}";
        foreach (var sheet in sheets.Sheets)
        {
            var page = pdf.AddPage();
            page.Width = XUnit.FromMillimeter(sheets.Stock.SheetWidth);
            page.Height = XUnit.FromMillimeter(sheets.Stock.SheetHeight);
            using var graphics = XGraphics.FromPdfPage(page);
            for (var place = 0; place < sheet.Count; place++)
            {
                if (sheet[place] is { } label)
                {
                    var (x, y) = sheets.Stock.At(place);
                    One(graphics, label, x * PointsPerMm, y * PointsPerMm, sheets.Stock.Width * PointsPerMm, sheets.Stock.Height * PointsPerMm);
                }
            }
        }

        using var file = new MemoryStream();
        pdf.Save(file);
        return file.ToArray();
    }

    private static void One(XGraphics sheet, Label label, double x, double y, double width, double height)
    {
        var code = Math.Min(height - (2 * Edge), width * 0.42);
        PdfCode.Draw(sheet, label.Address, x + Edge, y + ((height - code) / 2), code);
        var (left, room) = (x + Edge + code + 2, width - (2 * Edge) - code - 2);
        var title = LargestTitle;
        while (title > SmallestTitle && Words(sheet, label, title, room).Sum(w => w.Text.LineHeight) > height - (2 * Edge))
        {
            title -= 0.5;
        }

        var words = Words(sheet, label, title, room);
        var at = y + Math.Max(Edge, (height - words.Sum(w => w.Text.LineHeight)) / 2);
        foreach (var (text, line) in words)
        {
            text.Line(line, left, at, room, XStringAlignment.Near);
            at += text.LineHeight;
        }
    }

    private static IReadOnlyList<(PdfText Text, string Line)> Words(XGraphics sheet, Label label, double title, double room)
    {
        var (large, small) = (new PdfText(sheet, new XFont(PaperFonts.Family, title, XFontStyleEx.Bold)), new PdfText(sheet, new XFont(PaperFonts.Family, Math.Max(3.5, title * 0.62))));
        return
        [
            .. large.Wrap(label.Title, room).Select(line => (large, line)),
            .. label.Lines.Append(label.Code).SelectMany(line => small.Wrap(line, room)).Select(line => (small, line)),
        ];
    }
}
