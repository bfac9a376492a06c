using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Workshop.Web.Features.Paper;

/// <summary>Draws a paper on sheets of A4: breaks tables between rows, repeats their heads, numbers the sheets.</summary>
internal sealed class PaperPdf
{
    private const double Margin = 40;
    private const double FootRoom = 34;
    private const double CodeSize = 84;
    private const double LeastRow = 20;
    private const double BoxSize = 11;
    private const double CellGap = 4;
    private const double HandRoom = 18;
    private const double HighestPicture = 150;

    private static readonly XFont Plain = new(PaperFonts.Family, 8.5);
    private static readonly XFont Strong = new(PaperFonts.Family, 8.5, XFontStyleEx.Bold);
    private static readonly XFont Faint = new(PaperFonts.Family, 7);
    private static readonly XFont Heading = new(PaperFonts.Family, 11, XFontStyleEx.Bold);
    private static readonly XFont Title = new(PaperFonts.Family, 16, XFontStyleEx.Bold);
    private static readonly XPen Rule = new(XColors.Black, 0.4);
    private static readonly XPen Heavy = new(XColors.Black, 1);

    private readonly PaperDocument paper;
    private readonly PdfDocument pdf;
    private XGraphics sheet = null!;
    private double y;
    private string? heading;

    private PaperPdf(PaperDocument paper, PdfDocument pdf) => (this.paper, this.pdf) = (paper, pdf);

    private double Width => sheet.PageSize.Width - (2 * Margin);

    private double Bottom => sheet.PageSize.Height - Margin - FootRoom;

    public static byte[] Draw(PaperDocument paper)
    {
        ArgumentNullException.ThrowIfNull(paper);
        using var pdf = new PdfDocument();
        var drawing = new PaperPdf(paper, pdf);
        drawing.pdf.Info.Title = paper.Title;
        drawing.Turn();
        drawing.Head();
        foreach (var block in paper.Blocks)
        {
            drawing.Block(block);
        }

        drawing.sheet.Dispose();
        drawing.Feet();
        using var file = new MemoryStream();
        drawing.pdf.Save(file);
        return file.ToArray();
    }

    private void Turn()
    {
        sheet?.Dispose();
        var page = pdf.AddPage();
        page.Size = PageSize.A4;
        sheet = XGraphics.FromPdfPage(page);
        y = Margin;
    }

    private void Head()
    {
        var beside = Width - CodeSize - 12;
        Lines(paper.Title, Title, Margin, beside);
        y += 2;
        foreach (var line in paper.Head)
        {
            Lines(line, Plain, Margin, beside);
        }

        PdfCode.Draw(sheet, paper.Back, sheet.PageSize.Width - Margin - CodeSize, Margin - 8, CodeSize);
        var below = new PdfText(sheet, Faint);
        var words = below.Wrap(paper.BackWords, CodeSize);
        var at = Margin - 8 + CodeSize;
        foreach (var line in words)
        {
            below.Line(line, sheet.PageSize.Width - Margin - CodeSize, at, CodeSize, XStringAlignment.Center);
            at += below.LineHeight;
        }

        y = Math.Max(y, at) + 8;
    }

    private void Block(PaperBlock block)
    {
        switch (block)
        {
            case PaperHeading begins:
                // A heading never stands alone at the end of a sheet.
                Room(90);
                y += 8;
                Lines(begins.Text, Heading, Margin, Width);
                heading = begins.Text;
                break;
            case PaperText text:
                Lines(text.Text, text.Strong ? Strong : Plain, Margin, Width);
                y += 3;
                break;
            case PaperFields fields:
                Fields(fields);
                break;
            case PaperTable table:
                Table(table);
                break;
            case PaperPictures pictures:
                Pictures(pictures);
                break;
            default:
                throw new InvalidOperationException($"{block.GetType().Name} is not drawn.");
        }
    }

    private void Fields(PaperFields fields)
    {
        const int PerLine = 3;
        var width = Width / PerLine;
        foreach (var line in fields.Names.Chunk(PerLine))
        {
            var text = new PdfText(sheet, Faint);
            string[][] names = [.. line.Select(name => text.Wrap(name, width - 10).ToArray())];
            var height = (names.Max(n => n.Length) * text.LineHeight) + HandRoom;
            Room(height + 3);
            text = new PdfText(sheet, Faint);
            for (var i = 0; i < line.Length; i++)
            {
                for (var j = 0; j < names[i].Length; j++)
                {
                    text.Line(names[i][j], Margin + (i * width), y + (j * text.LineHeight), width - 10, XStringAlignment.Near);
                }

                sheet.DrawLine(Rule, Margin + (i * width), y + height, Margin + ((i + 1) * width) - 10, y + height);
            }

            y += height + 3;
        }

        y += 4;
    }

    private void Pictures(PaperPictures block)
    {
        const int PerLine = 3;
        var width = (Width / PerLine) - 10;
        foreach (var line in block.Pictures.Where(p => p.Jpeg is not null).Chunk(PerLine))
        {
            var text = new PdfText(sheet, Faint);
            string[][] words = [.. line.Select(p => text.Wrap(p.Words, width).ToArray())];
            using var drawn = new Drawn([.. line.Select(p => XImage.FromStream(new MemoryStream(p.Jpeg!)))]);
            XSize[] sizes = [.. drawn.Images.Select(i => Fit(i, width))];
            var height = sizes.Max(s => s.Height) + (words.Max(w => w.Length) * text.LineHeight) + 8;
            Room(height);
            text = new PdfText(sheet, Faint);
            for (var i = 0; i < line.Length; i++)
            {
                var x = Margin + (i * (width + 10));
                sheet.DrawImage(drawn.Images[i], x, y, sizes[i].Width, sizes[i].Height);
                for (var j = 0; j < words[i].Length; j++)
                {
                    text.Line(words[i][j], x, y + sizes[i].Height + 2 + (j * text.LineHeight), width, XStringAlignment.Near);
                }
            }

            y += height;
        }
    }

    /// <summary>As wide as there is room, and no higher than a hand.</summary>
    private static XSize Fit(XImage image, double width)
    {
        var scale = Math.Min(width / image.PixelWidth, HighestPicture / image.PixelHeight);
        return new XSize(image.PixelWidth * scale, image.PixelHeight * scale);
    }

    private sealed record Drawn(IReadOnlyList<XImage> Images) : IDisposable
    {
        public void Dispose()
        {
            foreach (var image in Images)
            {
                image.Dispose();
            }
        }
    }

    private void Table(PaperTable table)
    {
        var shares = table.Columns.Sum(c => c.Share);
        double[] widths = [.. table.Columns.Select(c => Width * c.Share / shares)];
        IReadOnlyList<PaperCell> head = [.. table.Columns.Select(c => new PaperCell(c.Name, Strong: true))];
        var headHeight = HeightOf(head, widths, Faint);
        Room(headHeight + LeastRow + 20);
        if (table.Caption != heading)
        {
            Lines(table.Caption, Faint, Margin, Width);
        }

        y += 2;
        HeadRow();
        foreach (var row in table.Rows)
        {
            var height = Math.Max(LeastRow, HeightOf(row, widths, null));
            if (y + height > Bottom)
            {
                Turn();
                Lines($"{table.Caption}, continued", Faint, Margin, Width);
                y += 2;
                HeadRow();
            }

            Row(row, height, null);
        }

        y += 6;

        void HeadRow()
        {
            Row(head, headHeight, Faint);
            sheet.DrawLine(Heavy, Margin, y, Margin + Width, y);
        }

        void Row(IReadOnlyList<PaperCell> row, double height, XFont? font)
        {
            var x = Margin;
            for (var i = 0; i < row.Count; i++)
            {
                Cell(row[i], x, widths[i], height, table.Columns[i].IsFigure, font);
                x += widths[i];
            }

            for (var (i, edge) = (0, Margin); i <= widths.Length; edge += i < widths.Length ? widths[i] : 0, i++)
            {
                sheet.DrawLine(Rule, edge, y, edge, y + height);
            }

            sheet.DrawLine(Rule, Margin, y, Margin + Width, y);
            y += height;
            sheet.DrawLine(Rule, Margin, y, Margin + Width, y);
        }
    }

    private double HeightOf(IReadOnlyList<PaperCell> row, double[] widths, XFont? font) => row.Select((cell, i) =>
    {
        var text = new PdfText(sheet, font ?? (cell.Strong ? Strong : Plain));
        var lines = cell.Text.Length == 0 ? 0 : text.Wrap(cell.Text, widths[i] - (2 * CellGap)).Count;
        var strip = cell.Strip is { } drawn ? PdfStrip.HeightOf(drawn, widths[i] - (2 * CellGap)) : 0;
        return (lines * text.LineHeight) + BoxRows(cell.Boxes, widths[i]) * (BoxSize + 3) + strip + CellGap + 3;
    }).Max();

    private static int BoxRows(int boxes, double width) => boxes == 0 ? 0 : (boxes + BoxesInALine(width) - 1) / BoxesInALine(width);

    private static int BoxesInALine(double width) => Math.Max(1, (int)((width - (2 * CellGap) + 3) / (BoxSize + 3)));

    private void Cell(PaperCell cell, double x, double width, double height, bool isFigure, XFont? font)
    {
        var text = new PdfText(sheet, font ?? (cell.Strong ? Strong : Plain));
        var at = y + CellGap;
        if (cell.Text.Length > 0)
        {
            foreach (var line in text.Wrap(cell.Text, width - (2 * CellGap)))
            {
                text.Line(line, x + CellGap, at, width - (2 * CellGap), isFigure ? XStringAlignment.Far : XStringAlignment.Near);
                at += text.LineHeight;
            }
        }

        if (cell.Strip is { } strip)
        {
            PdfStrip.Draw(sheet, strip, x + CellGap, at, width - (2 * CellGap));
        }

        var inALine = BoxesInALine(width);
        for (var i = 0; i < cell.Boxes; i++)
        {
            sheet.DrawRectangle(Rule, x + CellGap + (i % inALine * (BoxSize + 3)), at + (i / inALine * (BoxSize + 3)), BoxSize, BoxSize);
        }
    }

    private void Lines(string words, XFont font, double x, double width)
    {
        foreach (var line in new PdfText(sheet, font).Wrap(words, width))
        {
            var height = new PdfText(sheet, font).LineHeight;
            Room(height);
            new PdfText(sheet, font).Line(line, x, y, width, XStringAlignment.Near);
            y += height;
        }
    }

    private void Room(double height)
    {
        if (y + height > Bottom)
        {
            Turn();
        }
    }

    /// <summary>Title, foot and number of every sheet, once it is known how many there are.</summary>
    private void Feet()
    {
        for (var i = 0; i < pdf.PageCount; i++)
        {
            using var graphics = XGraphics.FromPdfPage(pdf.Pages[i]);
            var text = new PdfText(graphics, Faint);
            var (width, at) = (graphics.PageSize.Width - (2 * Margin), graphics.PageSize.Height - Margin - FootRoom + 8);
            graphics.DrawLine(Rule, Margin, at - 3, Margin + width, at - 3);
            foreach (var line in text.Wrap(paper.Foot, width))
            {
                text.Line(line, Margin, at, width, XStringAlignment.Near);
                at += text.LineHeight;
            }

            text.Line($"{paper.Title}, sheet {i + 1} of {pdf.PageCount}", Margin, at, width, XStringAlignment.Far);
        }
    }
}
