using System.Globalization;

namespace Workshop.Web.Tests.Hosting;

/// <summary>A data folder for one test, in a place that the server's user can enter.</summary>
internal sealed class TemporaryDataFolder : IDisposable
{
    private readonly DirectoryInfo parent = Directory.CreateTempSubdirectory("workshop-test-");

    public TemporaryDataFolder(string name = "data")
    {
        FileModes.Set(parent.FullName, "rwx--x--x");
        Path = System.IO.Path.Combine(parent.FullName, name);
    }

    public string Path { get; }

    public string Parent => parent.FullName;

    public string Home => System.IO.Path.Combine(Path, "postgres");

    public string PidFile => System.IO.Path.Combine(Home, "data", "postmaster.pid");

    public string[] Setting => [$"--Workshop:DataFolder={Path}"];

    public int ServerProcessId() => int.Parse(File.ReadLines(PidFile).First(), CultureInfo.InvariantCulture);

    public void Dispose() => parent.Delete(recursive: true);
}
