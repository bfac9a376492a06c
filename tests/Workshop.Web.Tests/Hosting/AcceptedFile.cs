using Xunit;

namespace Workshop.Tests.Hosting;

/// <summary>A text that is committed and must be what the service makes today; WORKSHOP_ACCEPT=1 writes it anew.</summary>
public static class AcceptedFile
{
    private static readonly bool Accept = Environment.GetEnvironmentVariable("WORKSHOP_ACCEPT") == "1";

    public static string Root { get; } = FindRoot();

    public static void Check(string relativePath, string actual)
    {
        var path = Path.Combine(Root, relativePath);
        if (Accept)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, actual);
            return;
        }

        Assert.True(File.Exists(path), $"{relativePath} is missing: run this test with WORKSHOP_ACCEPT=1 and commit what it writes.");
        var accepted = File.ReadAllText(path);
        if (accepted != actual)
        {
            var difference = accepted.Split('\n').Zip(actual.Split('\n')).FirstOrDefault(lines => lines.First != lines.Second);
            Assert.Fail(
                $"{relativePath} is stale. First difference: \"{difference.First}\" is committed, \"{difference.Second}\" is made today. "
                + "Where the change is meant, run this test with WORKSHOP_ACCEPT=1 and commit.");
        }
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Workshop.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("No Workshop.sln above the tests.");
    }
}
