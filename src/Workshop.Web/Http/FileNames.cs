namespace Workshop.Web.Http;

/// <summary>Names of files that are downloaded: letters, figures and hyphens, which every system takes.</summary>
internal static class FileNames
{
    /// <summary>"W-ÜB 12" becomes "w-b-12".</summary>
    public static string Plain(string text) => string.Join(
        '-',
        string.Concat(text.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : c is ' ' or '-' or '/' ? '-' : ' '))
            .Replace(" ", "", StringComparison.Ordinal).Split('-', StringSplitOptions.RemoveEmptyEntries));
}
