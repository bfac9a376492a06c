using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using NodaTime;
using NodaTime.Text;

namespace Workshop.Web.Features.Imports;

/// <param name="Optional">Those that a file may leave out.</param>
internal sealed record CsvColumns(IReadOnlyList<string> All, IReadOnlyList<string> Optional)
{
    /// <summary>Written in a cell's place when its column is left out.</summary>
    public const string LeftOut = "";
}

/// <summary>One line of a file as text, every column of the file's form in it.</summary>
internal sealed record CsvLine(int Number, IReadOnlyDictionary<string, string> Cells, FileFaults Faults)
{
    private const int LongestExcerpt = 40;
    private const string Excerpt = "…";

    public delegate bool TryRead<T>(string text, out T value);

    public string this[string column] => Cells.GetValueOrDefault(column, CsvColumns.LeftOut);

    /// <summary>A cell as a value; what cannot be read, or is missing, is a fault of the line.</summary>
    /// <param name="column">Its name.</param>
    /// <param name="read">Reads a text that is not empty.</param>
    /// <param name="allowed">What may stand there, in words.</param>
    /// <param name="mayBeEmpty">An empty cell is no fault.</param>
    public T? Cell<T>(string column, TryRead<T> read, string allowed, bool mayBeEmpty = false)
        where T : struct
    {
        var text = this[column];
        if (text.Length > 0 && read(text, out var value))
        {
            return value;
        }

        if (text.Length > 0 || !mayBeEmpty)
        {
            Faults.Add(Number, column, text.Length == 0 ? $"It is empty: {allowed} is allowed." : $"It is \"{Shorten(text)}\": {allowed} is allowed.");
        }

        return null;
    }

    public LocalDate? Day(string column) => Cell<LocalDate>(column, TryDate, "a day such as 2021-05-31");

    public int? Count(string column, string allowed) => Cell<int>(column, TryCount, allowed);

    public static string Shorten(string text) => text.Length <= LongestExcerpt ? text : text[..LongestExcerpt] + Excerpt;

    private static bool TryDate(string text, out LocalDate date) =>
        LocalDatePattern.Iso.Parse(text).TryGetValue(default, out date);

    private static bool TryCount(string text, out int count) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out count);
}

/// <summary>
/// Reads the lines of a file: RFC 4180 with commas, or with semicolons as spreadsheets write where the comma is the decimal
/// sign. A cell is text and nothing else: a formula is never computed.
/// </summary>
internal static class CsvLines
{
    public const int Most = 20_000;

    /// <summary>The lines that could be read, with what is wrong in <paramref name="faults"/>.</summary>
    public static IReadOnlyList<CsvLine> Read(string text, CsvColumns form, FileFaults faults)
    {
        var lines = new List<CsvLine>();
        var bad = new HashSet<int>();
        using var parser = new CsvParser(new StringReader(text.TrimStart('\uFEFF')), Configuration(text, bad));
        if (!parser.Read())
        {
            faults.Add(1, faults.FirstColumn, $"The file is empty; its first line names the columns: {string.Join(", ", form.All)}.");
            return lines;
        }

        if (Columns(parser.Record!, form, faults) is not { } columns)
        {
            return lines;
        }

        while (parser.Read())
        {
            var line = parser.RawRow;
            var cells = parser.Record!;
            if (cells.All(string.IsNullOrWhiteSpace))
            {
                continue;
            }

            if (lines.Count == Most)
            {
                faults.Add(line, faults.FirstColumn, $"More than {Most} lines: split the file.");
                break;
            }

            if (cells.Length != columns.Count || bad.Contains(line))
            {
                faults.Add(line, faults.FirstColumn, bad.Contains(line)
                    ? "A quotation mark stands inside a cell that is not quoted, or a quoted cell has no end."
                    : $"The line has {cells.Length} cells, the first line names {columns.Count}: put quotation marks around a number with a decimal comma, or semicolons between cells.");
                continue;
            }

            lines.Add(new CsvLine(line, columns.Zip(cells).ToDictionary(c => c.First, c => c.Second.Trim(), StringComparer.Ordinal), faults));
        }

        if (lines.Count == 0 && faults.None)
        {
            faults.Add(2, faults.FirstColumn, "The file has no line below its column names.");
        }

        return lines;
    }

    private static CsvConfiguration Configuration(string text, HashSet<int> bad)
    {
        var header = text.AsSpan(0, text.IndexOf('\n', StringComparison.Ordinal) is var end and >= 0 ? end : text.Length);
        return new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = header.Count(';') > 0 ? ";" : ",",
            BadDataFound = at => bad.Add(at.Context.Parser!.RawRow),
        };
    }

    private static List<string>? Columns(IReadOnlyList<string> header, CsvColumns form, FileFaults faults)
    {
        var known = form.All.ToDictionary(Plain);
        var columns = new List<string>();
        foreach (var cell in header)
        {
            if (!known.Remove(Plain(cell), out var column))
            {
                faults.Add(1, CsvLine.Shorten(cell), form.All.Any(c => Plain(c) == Plain(cell))
                    ? "The column is named twice."
                    : $"No such column; {string.Join(", ", form.All)} are allowed.");
                continue;
            }

            columns.Add(column);
        }

        foreach (var missing in known.Values.Except(form.Optional))
        {
            faults.Add(1, missing, $"The column is missing; the first line names {string.Join(", ", form.All)}.");
        }

        return faults.None ? columns : null;
    }

    /// <summary>"No-Go (mm)" and "noGoMm" name the column no-go.</summary>
    private static string Plain(string name)
    {
        var letters = string.Concat(name.Where(char.IsLetter)).ToLowerInvariant();
        return letters.EndsWith("mm", StringComparison.Ordinal) ? letters[..^2] : letters;
    }
}
