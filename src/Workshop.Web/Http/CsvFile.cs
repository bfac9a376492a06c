using System.Globalization;
using System.Text;
using CsvHelper;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using NodaTime.Text;

namespace Workshop.Web.Http;

/// <summary>
/// A table as a file to download, by RFC 4180: commas, a header line, lines end in CR LF. Numbers with a decimal point, days by
/// ISO 8601. A text that a spreadsheet would compute as a formula gets an apostrophe in front.
/// </summary>
internal static class CsvFile
{
    private const string ContentType = "text/csv; charset=utf-8; header=present";

    private static readonly char[] BeginsFormula = ['=', '+', '-', '@', '\t', '\r', '\n'];

    /// <param name="name">Of the file.</param>
    /// <param name="header">The names of the columns.</param>
    /// <param name="rows">Cells: text, numbers, days, or nothing.</param>
    public static FileContentResult Of(string name, IReadOnlyList<string> header, IEnumerable<IReadOnlyList<object?>> rows) =>
        new(Encoding.UTF8.GetBytes(Write(header, rows)), ContentType) { FileDownloadName = name };

    internal static string Write(IReadOnlyList<string> header, IEnumerable<IReadOnlyList<object?>> rows)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = new CsvWriter(text, CultureInfo.InvariantCulture))
        {
            foreach (var row in rows.Prepend(header))
            {
                foreach (var cell in row)
                {
                    csv.WriteField(Cell(cell));
                }

                csv.NextRecord();
            }
        }

        return text.ToString();
    }

    private static string Cell(object? value) => value switch
    {
        null => "",
        string text => text.Length > 0 && BeginsFormula.Contains(text[0]) ? $"'{text}" : text,
        LocalDate day => LocalDatePattern.Iso.Format(day),
        decimal number => number.ToString("0.######", CultureInfo.InvariantCulture),
        double number => number.ToString("0.######", CultureInfo.InvariantCulture),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => throw new ArgumentException($"A cell holds a {value.GetType().Name}, which no column writes.", nameof(value)),
    };
}
