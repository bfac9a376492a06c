namespace Workshop.Domain.Tests;

/// <summary>
/// The one way to the published check values in shared/check-values. A convention test looks for every file's name in
/// the test sources, so that none lies there unread; SOURCES.md there says where each comes from.
/// </summary>
internal static class CheckValues
{
    /// <summary>The folder that holds Workshop.sln, found by walking up from the running test.</summary>
    public static string RepositoryRoot { get; } = FindRepositoryRoot();

    public static string Folder { get; } = Path.Combine(RepositoryRoot, "shared", "check-values");

    /// <summary>Opens a file by its path below shared/check-values, such as <c>nist/Norris.dat</c>.</summary>
    public static StreamReader Open(string name) => new(Path.Combine(Folder, name));

    public static IReadOnlyList<string> Lines(string name)
    {
        using var reader = Open(name);
        return reader.ReadToEnd().Split('\n').Select(line => line.TrimEnd('\r')).ToList();
    }

    private static string FindRepositoryRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Workshop.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException($"No folder above {AppContext.BaseDirectory} holds Workshop.sln.");
    }
}
