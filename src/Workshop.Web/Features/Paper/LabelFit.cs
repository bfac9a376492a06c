namespace Workshop.Web.Features.Paper;

/// <summary>
/// How small a label's words are printed on the page, so that they stay on their label: reckoned by the room beside the code and by
/// letters as wide as those of a wide font, since the page does not know which font will print it.
/// </summary>
internal static class LabelFit
{
    /// <summary>Three tenths: smaller is not read.</summary>
    public const int Least = 3;

    private const int Whole = 10;
    private const double Edge = 2;
    private const double Gap = 1;
    private const double CodeShare = 0.42;
    private const double StrongLetter = 0.7;
    private const double PlainLetter = 0.62;
    private const double SmallShare = 0.68;
    private const double LineHeight = 1.15;

    /// <summary>A class of the print style; empty where the words fit as they are.</summary>
    public static string ClassOf(LabelStock stock, Label label) => TenthsOf(stock, label) is var tenths and < Whole ? $"fit-{tenths}" : "";

    /// <summary>Tenths of the usual size: the largest at which all lines fit, or the least.</summary>
    public static int TenthsOf(LabelStock stock, Label label)
    {
        var height = stock.Height - (2 * Edge);
        var room = stock.Width - (2 * Edge) - Gap - Math.Min(height, CodeShare * stock.Width);
        for (var tenths = Whole; tenths > Least; tenths--)
        {
            var title = stock.TitleSize * tenths / Whole;
            var lines = Lines(label.Title, room / (StrongLetter * title))
                + (SmallShare * label.Lines.Append(label.Code).Sum(line => Lines(line, room / (PlainLetter * SmallShare * title))));
            if (LineHeight * title * lines <= height)
            {
                return tenths;
            }
        }

        return Least;
    }

    /// <summary>How many lines a text takes that is broken at blanks, and within a word that is too long for any line.</summary>
    private static double Lines(string text, double letters)
    {
        var (fits, lines, used) = ((int)Math.Max(1, Math.Floor(letters)), 1, 0);
        foreach (var word in text.Split(' '))
        {
            var needed = used == 0 ? word.Length : used + 1 + word.Length;
            if (needed <= fits)
            {
                used = needed;
                continue;
            }

            lines += used == 0 ? 0 : 1;
            lines += (Math.Max(1, word.Length) - 1) / fits;
            used = ((Math.Max(1, word.Length) - 1) % fits) + 1;
        }

        return lines;
    }
}
