namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>
/// What the signs of a drift chart mean, drawn as the chart draws them: once a page, and in every picture that leaves it. The
/// one list of the chart's classes, which the style of the pages and that of the file must both know.
/// </summary>
public sealed record DriftKey(IReadOnlyList<DriftKey.Entry> Entries)
{
    public const double Width = DriftChart.Width;
    public const double RowHeight = 20;

    private const int Columns = 3;
    private const double ColumnWidth = 198;
    private const double Margin = 8;
    private const double TextAt = 34;

    /// <param name="Class">As the chart's.</param>
    /// <param name="Path">The sample.</param>
    public sealed record Entry(string Class, string Path, double TextX, double TextY, string Words);

    public double Height => Entries[^1].TextY + 8;

    /// <param name="shims">Clearances are set by shims; by screws where not.</param>
    public static DriftKey Of(bool shims) => new([.. Signs(shims).Select((sign, number) =>
    {
        var (x, y) = (Margin + (number % Columns * ColumnWidth), (number / Columns * RowHeight) + (RowHeight / 2));
        return new Entry(sign.Class, sign.Path(x, y), x + TextAt, y + 4, sign.Words);
    })]);

    private static IEnumerable<(string Class, Func<double, double, string> Path, string Words)> Signs(bool shims)
    {
        yield return ("found", Bar, "as found");
        yield return ("left", Bar, "as left");
        yield return ("kept-out", Bar, "not counted");
        yield return ("limit", Line, "limits");
        yield return ("set-to", Line, "set-to value");
        yield return ("estimate", Line, "middle, so far");
        yield return ("ahead", Line, "middle, expected");
        yield return ("fan-50", Box, "there with 50 %");
        yield return ("fan-90", Box, "there with 90 %");
        yield return ("reach", (x, y) => $"M{At(x)} {At(y - 4)}v8M{At(x)} {At(y)}h26m0 -4v8M{At(x + 12)} {At(y - 7)}v14", "leaves, 10 to 90 %");
        if (shims)
        {
            yield return ("swap", Upright, "shim changed");
        }

        yield return ("cut", Upright, "new level");
        yield return ("check", Upright, "next check");
    }

    private static string Bar(double x, double y) => $"M{At(x + 10)} {At(y - 7)}h5.5v14h-5.5z";

    private static string Line(double x, double y) => $"M{At(x)} {At(y)}h26";

    private static string Box(double x, double y) => $"M{At(x)} {At(y - 6)}h26v12h-26z";

    private static string Upright(double x, double y) => $"M{At(x + 13)} {At(y - 9)}v18";

    private static string At(double coordinate) => DriftChart.Write(coordinate);
}
