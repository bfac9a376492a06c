namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>
/// One drift chart as a file that stands alone: the same parts as on the page, on white, with what a reader elsewhere must know:
/// whose engine, what the signs mean, on what it rests and what it does not promise. Shown by
/// <c>Drawings/_DriftPicture.cshtml</c>.
/// </summary>
/// <param name="Heading">Which motorcycle and which lobe.</param>
/// <param name="Chart">The chart.</param>
/// <param name="Key">What its signs mean.</param>
/// <param name="Notes">What stands below, in order; a line breaks where it is full.</param>
public sealed record DriftPicture(string Heading, DriftChart Chart, DriftKey Key, IReadOnlyList<string> Notes)
{
    public const string ContentType = "image/svg+xml; charset=utf-8";
    public const double Width = DriftChart.Width;
    public const double ChartTop = 28;
    public const double NoteHeight = 16;

    /// <summary>
    /// What the style sheet of the pages says of a drift chart, in the colours of paper. Classes and plain colours alone, which
    /// every drawing program reads.
    /// </summary>
    public const string Style =
        """
        text { fill: #14181c; font: 12px system-ui, "Noto Sans", "DejaVu Sans", sans-serif; }
        .heading { font-size: 15px; font-weight: 600; }
        .ground { fill: #ffffff; }
        .axis { stroke: #c4c8cb; fill: none; }
        .fan-90 { fill: #e4e7e9; stroke: #545c64; stroke-width: 0.8; stroke-dasharray: 1 3; }
        .fan-50 { fill: #c3cad0; stroke: #545c64; stroke-width: 0.8; }
        .limit { stroke: #14181c; stroke-width: 2; fill: none; }
        .set-to { stroke: #0b5c8a; stroke-width: 1; stroke-dasharray: 3 2; fill: none; }
        .swap { stroke: #545c64; stroke-dasharray: 4 3; }
        .cut { stroke: #14181c; stroke-dasharray: 1 2; stroke-width: 2; }
        .check { stroke: #0b5c8a; stroke-dasharray: 8 2 2 2; }
        .estimate { stroke: #0b5c8a; stroke-width: 1.5; fill: none; }
        .ahead { stroke: #0b5c8a; stroke-width: 1.5; stroke-dasharray: 6 3; fill: none; }
        .reach { stroke: #0b5c8a; stroke-width: 2.5; fill: none; }
        .found { fill: #14181c; }
        .left { fill: #ffffff; stroke: #14181c; stroke-width: 1.2; }
        .kept-out { fill: none; stroke: #545c64; stroke-dasharray: 2 2; }
        """;

    /// <summary>So many characters fill a line in any usual typeface.</summary>
    private const int LineLength = 84;

    /// <summary>The notes as lines.</summary>
    public IReadOnlyList<string> Lines { get; } = [.. Notes.SelectMany(Broken)];

    public double KeyTop => ChartTop + DriftChart.Height + 8;

    public double NotesTop => KeyTop + Key.Height + NoteHeight;

    public double Height => NotesTop + (Lines.Count * NoteHeight);

    private static IEnumerable<string> Broken(string note)
    {
        var line = "";
        foreach (var word in note.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > LineLength)
            {
                yield return line;
                line = "";
            }

            line = line.Length == 0 ? word : $"{line} {word}";
        }

        yield return line;
    }
}
