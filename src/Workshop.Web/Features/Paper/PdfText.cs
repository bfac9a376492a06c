using PdfSharp.Drawing;

namespace Workshop.Web.Features.Paper;

/// <summary>Text in one font: how it wraps, and where it is put. What is wider than its room is broken, never cut off.</summary>
internal readonly struct PdfText(XGraphics sheet, XFont font)
{
    private readonly XGraphics sheet = sheet;
    private readonly XFont font = font;

    public double LineHeight => font.GetHeight() * 1.02;

    /// <summary>Lines that fit a width: broken at spaces, and within a word that is too long for any line.</summary>
    public IReadOnlyList<string> Wrap(string text, double width)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' '))
            {
                var longer = line.Length == 0 ? word : $"{line} {word}";
                if (WidthOf(longer) <= width)
                {
                    line = longer;
                    continue;
                }

                if (line.Length > 0)
                {
                    lines.Add(line);
                }

                line = word;
                while (WidthOf(line) > width && line.Length > 1)
                {
                    var fits = Fitting(line, width);
                    lines.Add(line[..fits]);
                    line = line[fits..];
                }
            }

            lines.Add(line);
        }

        return lines;
    }

    public void Line(string text, double x, double y, double width, XStringAlignment alignment) => sheet.DrawString(
        text, font, XBrushes.Black, new XRect(x, y, width, LineHeight),
        new XStringFormat { Alignment = alignment, LineAlignment = XLineAlignment.Near });

    private double WidthOf(string text) => sheet.MeasureString(text, font).Width;

    private int Fitting(string word, double width)
    {
        var length = word.Length - 1;
        while (length > 1 && WidthOf(word[..length]) > width)
        {
            length--;
        }

        return length;
    }
}
