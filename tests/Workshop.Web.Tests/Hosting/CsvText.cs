using System.Globalization;
using CsvHelper;

namespace Workshop.Tests.Hosting;

/// <summary>A file as a program elsewhere reads it: cells by the name of their column.</summary>
internal static class CsvText
{
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Read(string text)
    {
        using var parser = new CsvParser(new StringReader(text), CultureInfo.InvariantCulture);
        var rows = new List<IReadOnlyDictionary<string, string>>();
        var header = parser.Read() ? parser.Record! : [];
        while (parser.Read())
        {
            rows.Add(header.Zip(parser.Record!).ToDictionary(c => c.First, c => c.Second));
        }

        return rows;
    }
}
