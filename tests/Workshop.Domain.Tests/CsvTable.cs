using System.Globalization;

namespace Workshop.Domain.Tests;

/// <summary>
/// A small comma-separated table with a header, as the check values and the catalogue are kept: no comma and no line
/// break inside a field, quotes around a whole field allowed.
/// </summary>
internal sealed class CsvTable
{
    private CsvTable(string name, IReadOnlyList<string> columns, IReadOnlyList<CsvRow> rows)
    {
        Name = name;
        Columns = columns;
        Rows = rows;
    }

    public string Name { get; }

    public IReadOnlyList<string> Columns { get; }

    public IReadOnlyList<CsvRow> Rows { get; }

    public double[] Numbers(string column) =>
        Rows.Select(row => double.Parse(row[column], CultureInfo.InvariantCulture)).ToArray();

    public static CsvTable Read(string name, IEnumerable<string> lines)
    {
        var fields = lines.Where(line => line.Length > 0 && line[0] != '#').Select(Split).ToList();
        var columns = fields[0];
        var rows = fields.Skip(1).Select((row, index) => row.Count == columns.Count
            ? new CsvRow($"{name} row {index + 1}", columns.Zip(row).ToDictionary(pair => pair.First, pair => pair.Second))
            : throw new FormatException($"{name} row {index + 1} has {row.Count} fields, its header {columns.Count}."));
        return new CsvTable(name, columns, rows.ToList());
    }

    private static List<string> Split(string line) => line.Split(',').Select(field => field.Trim().Trim('"')).ToList();
}

internal sealed class CsvRow(string place, IReadOnlyDictionary<string, string> fields)
{
    public string Place => place;

    public string this[string column] => fields[column];

    public decimal Number(string column) =>
        decimal.TryParse(fields[column], NumberStyles.Number, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw new FormatException($"{place}: {column} is '{fields[column]}', not a number.");

    public decimal? NumberOrNone(string column) => fields[column].Length == 0 ? null : Number(column);

    public override string ToString() => place;
}
