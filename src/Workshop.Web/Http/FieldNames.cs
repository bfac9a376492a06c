using System.Text.Json;

namespace Workshop.Web.Http;

/// <summary>Names of fields as a caller writes them: <c>Readings[3].GoMm</c> is <c>readings[3].goMm</c>.</summary>
public static class FieldNames
{
    public static string Camel(string path) =>
        string.Join('.', (path ?? "").Split('.').Select(JsonNamingPolicy.CamelCase.ConvertName));
}
