using System.Text.Json;

namespace Workshop.Web.Http;

/// <summary>Names of fields as a caller writes them: <c>Readings[3].GoMm</c> is <c>readings[3].goMm</c>.</summary>
public static class FieldNames
{
    public static string Camel(string path) =>
        string.Join('.', (path ?? "").Split('.').Select(JsonNamingPolicy.CamelCase.ConvertName));

    /// <summary>
    /// A sentence that begins with a field's own name, of one row among several: it begins with the row, too. All others stay as they are.
    /// </summary>
    /// <param name="path">The field's whole path.</param>
    public static string WithRow(string path, string sentence)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(sentence);
        var whole = Camel(path);
        var name = whole[(whole.LastIndexOf('.') + 1)..];
        return whole.Contains('[', StringComparison.Ordinal) && sentence.StartsWith($"{name} ", StringComparison.Ordinal)
            ? whole + sentence[name.Length..]
            : sentence;
    }
}
