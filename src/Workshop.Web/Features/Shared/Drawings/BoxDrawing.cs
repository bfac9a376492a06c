using System.Globalization;
using System.Text;
using Workshop.Domain.Measures;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>What lies in one compartment.</summary>
public sealed record CompartmentStock(string Address, int Row, int Column, ShimThickness Nominal, int New, int Used);

/// <summary>One compartment where it lies in the drawing: its shims seen edge on, new ones full, used ones in outline.</summary>
/// <param name="NewPath">Outlines of the new shims, empty where there are none.</param>
/// <param name="More">How many do not fit into the drawing.</param>
public sealed record CompartmentDrawing(
    decimal X, decimal Y, string Nominal, int Count, string NewPath, string UsedPath, int More, bool Found);

/// <summary>
/// A shim box from above, rows by letter and columns by number as on a map, and in each compartment its shims as a stack seen
/// from the side. Pure geometry in the drawing's own units. Shown by <c>&lt;partial name="Drawings/_Box" model="drawing" /&gt;</c>,
/// a table beside it.
/// </summary>
public sealed record BoxDrawing
{
    public const decimal CellWidth = 66;
    public const decimal CellHeight = 56;

    private const decimal Margin = 24;
    private const decimal DiscWidth = 34;
    private const decimal DiscHeight = 4;
    private const decimal DiscGap = 2;
    private const int MostDiscs = 5;

    public required decimal Width { get; init; }

    public required decimal Height { get; init; }

    public required string Words { get; init; }

    /// <summary>The lines between compartments, one path.</summary>
    public required string Grid { get; init; }

    public required IReadOnlyList<(decimal X, string Text)> Columns { get; init; }

    public required IReadOnlyList<(decimal Y, string Text)> Rows { get; init; }

    public required IReadOnlyList<CompartmentDrawing> Compartments { get; init; }

    /// <param name="columns">Compartments in a row.</param>
    /// <param name="compartments">Row by row, at least one.</param>
    /// <param name="found">Addresses that are marked.</param>
    /// <param name="words">What the drawing says, for those who do not see it.</param>
    public static BoxDrawing Of(int columns, IReadOnlyList<CompartmentStock> compartments, IReadOnlySet<string> found, string words)
    {
        ArgumentNullException.ThrowIfNull(compartments);
        ArgumentNullException.ThrowIfNull(found);
        var rows = compartments.Max(c => c.Row) + 1;
        var (width, height) = (Margin + (columns * CellWidth) + 1, Margin + (rows * CellHeight) + 1);
        return new BoxDrawing
        {
            Width = width,
            Height = height,
            Words = words,
            Grid = GridOf(columns, rows),
            Columns = [.. Enumerable.Range(0, columns).Select(c => (Margin + ((c + 0.5m) * CellWidth), (c + 1).ToString(CultureInfo.InvariantCulture)))],
            Rows =
            [
                .. compartments.Where(c => c.Column == 0).Select(c =>
                    (Margin + ((c.Row + 0.5m) * CellHeight), c.Address.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9'))),
            ],
            Compartments = [.. compartments.Select(c => Draw(c, found.Contains(c.Address)))],
        };
    }

    /// <summary>A coordinate as SVG writes it.</summary>
    public static string Write(decimal coordinate) => coordinate.ToString("0.##", CultureInfo.InvariantCulture);

    private static CompartmentDrawing Draw(CompartmentStock stock, bool found)
    {
        var (x, y) = (Margin + (stock.Column * CellWidth), Margin + (stock.Row * CellHeight));
        var drawnNew = Math.Min(stock.New, MostDiscs);
        var drawnUsed = Math.Min(stock.Used, MostDiscs - drawnNew);
        return new CompartmentDrawing(
            x, y, stock.Nominal.Millimetres.ToString("0.00#", CultureInfo.InvariantCulture), stock.New + stock.Used,
            Discs(x, y, 0, drawnNew), Discs(x, y, drawnNew, drawnUsed), stock.New + stock.Used - drawnNew - drawnUsed, found);
    }

    /// <summary>From the floor of the compartment upwards.</summary>
    private static string Discs(decimal x, decimal y, int from, int count)
    {
        var path = new StringBuilder();
        for (var i = from; i < from + count; i++)
        {
            var top = y + CellHeight - 5 - ((i + 1) * (DiscHeight + DiscGap)) + DiscGap;
            path.Append(CultureInfo.InvariantCulture, $"M{Write(x + 6)} {Write(top)}h{Write(DiscWidth)}v{Write(DiscHeight)}h-{Write(DiscWidth)}z");
        }

        return path.ToString();
    }

    private static string GridOf(int columns, int rows)
    {
        var path = new StringBuilder();
        for (var column = 0; column <= columns; column++)
        {
            path.Append(CultureInfo.InvariantCulture, $"M{Write(Margin + (column * CellWidth))} {Write(Margin)}v{Write(rows * CellHeight)}");
        }

        for (var row = 0; row <= rows; row++)
        {
            path.Append(CultureInfo.InvariantCulture, $"M{Write(Margin)} {Write(Margin + (row * CellHeight))}h{Write(columns * CellWidth)}");
        }

        return path.ToString();
    }
}
