namespace Workshop.Web.Features.Paper;

/// <summary>
/// A kind of label sheet by its measures, in mm. Common practice, no source: such sheets are sold by many, and the first print on plain
/// paper shows whether the measures are those of the sheet at hand.
/// </summary>
/// <param name="Code">In addresses, and the class of its print style.</param>
/// <param name="Left">Of the first label, from the sheet's edge.</param>
/// <param name="Across">From the left edge of a label to that of the next.</param>
/// <param name="TitleSize">Of the title's letters on the page, where the words fit.</param>
public sealed record LabelStock(
    string Code, string Name, double SheetWidth, double SheetHeight, int Columns, int Rows, double Width, double Height, double Left, double Top,
    double Across, double Down, double TitleSize)
{
    private const double A4Width = 210;
    private const double A4Height = 297;

    public static IReadOnlyList<LabelStock> All { get; } =
    [
        new("a4-3x8", "A4, 3 x 8 labels of 70 x 37 mm", A4Width, A4Height, 3, 8, 70, 37, 0, 0.5, 70, 37, 4),
        new("a4-3x7", "A4, 3 x 7 labels of 63.5 x 38.1 mm", A4Width, A4Height, 3, 7, 63.5, 38.1, 7.2, 15.1, 66, 38.1, 4),
        new("a4-2x7", "A4, 2 x 7 labels of 99.1 x 38.1 mm", A4Width, A4Height, 2, 7, 99.1, 38.1, 4.65, 15.1, 101.6, 38.1, 4),
        new("a4-5x13", "A4, 5 x 13 labels of 38.1 x 21.2 mm", A4Width, A4Height, 5, 13, 38.1, 21.2, 4.75, 10.7, 40.6, 21.2, 2.8),
        new("roll-62x29", "One by one, 62 x 29 mm", 62, 29, 1, 1, 62, 29, 0, 0, 62, 29, 3.6),
        new("roll-100x50", "One by one, 100 x 50 mm", 100, 50, 1, 1, 100, 50, 0, 0, 100, 50, 5.5),
    ];

    public static LabelStock? Find(string? code) => All.FirstOrDefault(s => s.Code == code);

    public int PerSheet => Columns * Rows;

    /// <summary>Where a label lies on its sheet, counted from 0, row by row.</summary>
    public (double X, double Y) At(int place) => (Left + (place % Columns * Across), Top + (place / Columns * Down));
}

/// <param name="Title">What is read from afar.</param>
/// <param name="Code">What may be typed where no scanner is.</param>
/// <param name="Address">What the code of squares leads to.</param>
public sealed record Label(string Title, IReadOnlyList<string> Lines, string Code, Uri Address);

/// <summary>Labels on their sheets.</summary>
/// <param name="First">The first free label of the first sheet, from 1: the ones before it are used already.</param>
public sealed record LabelSheets(LabelStock Stock, int First, IReadOnlyList<Label> Labels)
{
    /// <summary>Sheet by sheet: at each place a label, or nothing.</summary>
    public IReadOnlyList<IReadOnlyList<Label?>> Sheets => [.. Enumerable.Repeat<Label?>(null, First - 1).Concat(Labels)
        .Chunk(Stock.PerSheet).Select(s => (IReadOnlyList<Label?>)s)];
}
