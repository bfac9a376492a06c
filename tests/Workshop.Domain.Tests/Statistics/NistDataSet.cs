using System.Globalization;
using System.Text.RegularExpressions;

namespace Workshop.Domain.Tests.Statistics;

/// <summary>
/// Reads a file of the NIST/ITL Statistical Reference Datasets as NIST publishes it: data and certified values both
/// come from the file, never from a copy in a test.
/// </summary>
internal sealed partial class NistDataSet
{
    private readonly string name;
    private readonly IReadOnlyList<string> lines;
    private readonly IReadOnlyList<double[]> rows;

    private NistDataSet(string name, IReadOnlyList<string> lines, IReadOnlyList<double[]> rows)
    {
        this.name = name;
        this.lines = lines;
        this.rows = rows;
    }

    public static NistDataSet Read(string file)
    {
        var lines = CheckValues.Lines(file);

        // The header says "Data (lines 61 to 96)"; the univariate files instead set a rule under "Data: Y".
        var stated = lines.Select(line => DataLines().Match(line)).FirstOrDefault(match => match.Success);
        var rule = lines.ToList().FindIndex(line => line.StartsWith("-----", StringComparison.Ordinal));
        var data = stated is not null
            ? lines.Skip(int.Parse(stated.Groups[1].Value) - 1)
                .Take(int.Parse(stated.Groups[2].Value) - int.Parse(stated.Groups[1].Value) + 1)
            : lines.Skip(rule + 1);
        var rows = data.Where(line => line.Trim().Length > 0).Select(Numbers).ToList();
        return new NistDataSet(file, lines, rows);
    }

    /// <summary>One column of the data, 0 for the first.</summary>
    public double[] Column(int index) => rows.Select(row => row[index]).ToArray();

    /// <summary>The columns of the data, which are the treatments of an analysis of variance.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Columns => rows[0].Select((_, index) => Column(index)).ToList();

    /// <summary>
    /// The number at a place (0 for the first) after a label, on the one certified line that begins with it.
    /// </summary>
    public double Certified(string label, int place = 0)
    {
        var found = lines.Where(line => line.Trim().StartsWith(label, StringComparison.Ordinal))
            .Select(line => Numbers(line.Trim()[label.Length..]))
            .Where(numbers => numbers.Length > place)
            .ToList();
        return found.Count == 1
            ? found[0][place]
            : throw new FormatException($"{name} has {found.Count} lines '{label}' with a number at place {place}.");
    }

    private static double[] Numbers(string text) =>
        Number().Matches(text).Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture)).ToArray();

    [GeneratedRegex(@"^\s+Data\s+\(lines (\d+) to (\d+)\)")]
    private static partial Regex DataLines();

    [GeneratedRegex(@"(?<![\w.(])[-+]?\d+(\.\d*)?([eE][-+]?\d+)?(?![\w)])")]
    private static partial Regex Number();
}
