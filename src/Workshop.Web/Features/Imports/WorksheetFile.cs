using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>
/// Reads a file of old worksheets: RFC 4180 with commas, or with semicolons as spreadsheets write where the comma is the
/// decimal sign. A cell is text and nothing else: a formula is never computed.
/// </summary>
internal static class WorksheetFile
{
    public const int MostLines = 20_000;

    private const string Excerpt = "…";
    private const int LongestExcerpt = 40;

    private static readonly WorksheetRow.Validator Rules = new();

    /// <summary>The rows that could be read, with what is wrong in <paramref name="faults"/>.</summary>
    public static IReadOnlyList<WorksheetRow> Read(string text, WorksheetFaults faults)
    {
        var rows = new List<WorksheetRow>();
        var bad = new HashSet<int>();
        using var parser = new CsvParser(new StringReader(text.TrimStart('\uFEFF')), Configuration(text, bad));
        if (!parser.Read())
        {
            faults.Add(1, WorksheetColumn.Motorcycle, $"The file is empty; its first line names the columns: {string.Join(", ", WorksheetColumn.All)}.");
            return rows;
        }

        if (Columns(parser.Record!, faults) is not { } columns)
        {
            return rows;
        }

        while (parser.Read())
        {
            var line = parser.RawRow;
            var cells = parser.Record!;
            if (cells.All(string.IsNullOrWhiteSpace))
            {
                continue;
            }

            if (rows.Count == MostLines)
            {
                faults.Add(line, WorksheetColumn.Motorcycle, $"More than {MostLines} lines: split the file.");
                break;
            }

            if (cells.Length != columns.Count || bad.Contains(line))
            {
                faults.Add(line, WorksheetColumn.Motorcycle, bad.Contains(line)
                    ? "A quotation mark stands inside a cell that is not quoted, or a quoted cell has no end."
                    : $"The line has {cells.Length} cells, the first line names {columns.Count}: put quotation marks around a number with a decimal comma, or semicolons between cells.");
                continue;
            }

            rows.Add(RowOf(line, columns.Zip(cells).ToDictionary(c => c.First, c => c.Second.Trim()), faults));
        }

        if (rows.Count == 0 && faults.None)
        {
            faults.Add(2, WorksheetColumn.Motorcycle, "The file has no line below its column names.");
        }

        return rows;
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

    private static List<string>? Columns(IReadOnlyList<string> header, WorksheetFaults faults)
    {
        var known = WorksheetColumn.All.ToDictionary(Plain);
        var columns = new List<string>();
        foreach (var cell in header)
        {
            if (!known.Remove(Plain(cell), out var column))
            {
                faults.Add(1, Shorten(cell), WorksheetColumn.All.Any(c => Plain(c) == Plain(cell))
                    ? "The column is named twice."
                    : $"No such column; {string.Join(", ", WorksheetColumn.All)} are allowed.");
                continue;
            }

            columns.Add(column);
        }

        foreach (var missing in known.Values.Where(c => c != WorksheetColumn.Optional))
        {
            faults.Add(1, missing, $"The column is missing; the first line names {string.Join(", ", WorksheetColumn.All)}.");
        }

        return faults.None ? columns : null;
    }

    /// <summary>"No-Go (mm)" and "noGoMm" name the column no-go.</summary>
    private static string Plain(string name)
    {
        var letters = string.Concat(name.Where(char.IsLetter)).ToLowerInvariant();
        return letters.EndsWith("mm", StringComparison.Ordinal) ? letters[..^2] : letters;
    }

    private static WorksheetRow RowOf(int line, Dictionary<string, string> cells, WorksheetFaults faults)
    {
        var row = new WorksheetRow(
            line,
            cells[WorksheetColumn.Motorcycle],
            Cell<LocalDate>(WorksheetColumn.Date, TryDate, "a day such as 2021-05-31"),
            Cell<int>(WorksheetColumn.Odometer, TryCount, "a whole number of the odometer's own unit, without separators"),
            Cell<LobeKey>(WorksheetColumn.Valve, TryLobe, $"{ValveKey.Form}, with /2 behind it for a second lobe"),
            Cell<Stage>(WorksheetColumn.Stage, TryStage, "\"as found\" or \"as left\""),
            Cell<decimal>(WorksheetColumn.Go, DecimalBinder.TryRead, "a number such as 0.15 or 0,15", mayBeEmpty: true),
            Cell<decimal>(WorksheetColumn.NoGo, DecimalBinder.TryRead, "a number such as 0.15 or 0,15", mayBeEmpty: true),
            Cell<decimal>(WorksheetColumn.Shim, DecimalBinder.TryRead, "a number such as 2.475 or 2,475, or nothing", mayBeEmpty: true));
        var unread = new[] { (WorksheetColumn.Go, row.GoMm), (WorksheetColumn.NoGo, row.NoGoMm) }
            .Any(end => end.Item2 is null && cells[end.Item1].Length > 0);
        foreach (var fault in Rules.Validate(row).Errors)
        {
            // A cell that is no number has been said so; that its end is then missing is no second fault.
            if (!unread || fault.PropertyName is not (WorksheetColumn.Go or WorksheetColumn.NoGo))
            {
                faults.Add(line, fault.PropertyName, fault.ErrorMessage);
            }
        }

        return row;

        T? Cell<T>(string column, TryRead<T> read, string allowed, bool mayBeEmpty = false)
            where T : struct
        {
            var text = cells.TryGetValue(column, out var cell) ? cell : "";
            if (text.Length > 0 && read(text, out var value))
            {
                return value;
            }

            if (text.Length > 0 || !mayBeEmpty)
            {
                faults.Add(line, column, text.Length == 0 ? $"It is empty: {allowed} is allowed." : $"It is \"{Shorten(text)}\": {allowed} is allowed.");
            }

            return null;
        }
    }

    private delegate bool TryRead<T>(string text, out T value);

    private static bool TryDate(string text, out LocalDate date) =>
        LocalDatePattern.Iso.Parse(text).TryGetValue(default, out date);

    private static bool TryCount(string text, out int count) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out count);

    private static bool TryLobe(string text, out LobeKey lobe)
    {
        lobe = default;
        var (valveText, lobeText) = text.Split('/') switch
        {
            [var v] => (v, "1"),
            [var v, var l] => (v, l),
            _ => ("", ""),
        };
        if (!ValveKey.TryParse(valveText, null, out var valve)
            || !int.TryParse(lobeText, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < 1)
        {
            return false;
        }

        lobe = new LobeKey(valve, number);
        return true;
    }

    private static bool TryStage(string text, out Stage stage)
    {
        var word = string.Concat(text.Where(char.IsLetter)).ToLowerInvariant();
        stage = word == "asleft" ? Stage.AsLeft : Stage.AsFound;
        return word is "asfound" or "asleft";
    }

    private static string Shorten(string text) => text.Length <= LongestExcerpt ? text : text[..LongestExcerpt] + Excerpt;
}
