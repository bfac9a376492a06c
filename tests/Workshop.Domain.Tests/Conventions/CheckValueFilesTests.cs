namespace Workshop.Domain.Tests.Conventions;

/// <summary>
/// A reference file that no test reads proves nothing and looks as if it did. Tests name a file by its path below
/// shared/check-values, through <see cref="CheckValues"/>; SOURCES.md there names where each comes from.
/// </summary>
public class CheckValueFilesTests
{
    private const string Sources = "SOURCES.md";

    [Fact]
    public void Every_file_is_read_by_a_test()
    {
        var tests = TestSources();

        Assert.Contains("nist/Norris.dat", Files());
        Assert.DoesNotContain(
            Files(), file => !tests.Any(test => test.Contains($"\"{file}\"", StringComparison.Ordinal)));
    }

    [Fact]
    public void Tests_reach_the_files_by_one_way_only()
    {
        var others = Directory.EnumerateFiles(Path.Combine(CheckValues.RepositoryRoot, "tests"), "*.cs", SearchOption.AllDirectories)
            .Where(IsWritten)
            .Where(path => Path.GetFileName(path) is not ("CheckValues.cs" or "CheckValueFilesTests.cs"))
            .Where(path => File.ReadAllText(path).Contains("\"check-values\"", StringComparison.Ordinal));

        Assert.Empty(others);
    }

    [Fact]
    public void Every_file_has_a_source_and_every_source_a_file()
    {
        var rows = CheckValues.Lines(Sources)
            .Where(line => line.StartsWith("| `", StringComparison.Ordinal))
            .Select(line => line.Trim('|').Split('|').Select(cell => cell.Trim()).ToArray())
            .ToList();
        var named = rows.Select(row => row[0].Trim('`')).ToList();

        Assert.All(rows, row => Assert.True(row.Length == 3 && row[1].Length > 10, $"{row[0]} has no source"));
        Assert.DoesNotContain(Files(), file => !named.Any(name => Covers(name, file)));
        Assert.DoesNotContain(named, name => !Files().Any(file => Covers(name, file)));
    }

    private static bool Covers(string name, string file) =>
        name.EndsWith('/') ? file.StartsWith(name, StringComparison.Ordinal) : file == name;

    private static List<string> Files() =>
        Directory.EnumerateFiles(CheckValues.Folder, "*", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(CheckValues.Folder, path).Replace('\\', '/'))
            .Where(file => file != Sources)
            .ToList();

    /// <summary>This source is left out: it names a file without reading it.</summary>
    private static List<string> TestSources() =>
        Directory.EnumerateFiles(Path.Combine(CheckValues.RepositoryRoot, "tests"), "*.cs", SearchOption.AllDirectories)
            .Where(path => IsWritten(path) && Path.GetFileName(path) != "CheckValueFilesTests.cs")
            .Select(File.ReadAllText)
            .ToList();

    private static bool IsWritten(string path)
    {
        var parts = Path.GetRelativePath(CheckValues.RepositoryRoot, path).Split(Path.DirectorySeparatorChar);
        return !parts.Contains("obj") && !parts.Contains("bin");
    }
}
