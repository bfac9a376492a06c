using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Xunit;

[assembly: AssemblyFixture(typeof(PostgresServer))]

namespace Workshop.Browser.Tests.Hosting;

/// <summary>Every test of this project looks at the same running service.</summary>
[CollectionDefinition(Name)]
public sealed class RunningDemo : ICollectionFixture<DemoService>
{
    public const string Name = "running demo";
}

/// <summary>
/// The service as a newcomer starts it: its own process, the demo's data, the real clock, generated passwords. Once for the
/// whole test run.
/// </summary>
public sealed class DemoService(PostgresServer server) : IAsyncLifetime
{
    private static readonly TimeSpan LongestStart = TimeSpan.FromMinutes(3);

    private readonly string dataFolder = Directory.CreateTempSubdirectory("workshop-demo-").FullName;
    private readonly List<string> output = [];
    private TestDatabase? database;
    private Process? process;

    public Uri Address { get; private set; } = new("http://127.0.0.1");

    /// <summary>Account name to password, as the demo generated them.</summary>
    public IReadOnlyDictionary<string, string> Passwords { get; private set; } = new Dictionary<string, string>();

    public async ValueTask InitializeAsync()
    {
        database = await server.CreateDatabaseAsync();
        Address = new Uri($"http://127.0.0.1:{FreePort()}");
        var start = new ProcessStartInfo("dotnet")
        {
            ArgumentList =
            {
                typeof(WorkshopDbContext).Assembly.Location,
                $"--urls={Address}",
                "--Workshop:Demo=true",
                $"--Workshop:DataFolder={dataFolder}",
                $"--ConnectionStrings:Workshop={database.Connections.Service}",
                $"--ConnectionStrings:WorkshopDirect={database.Connections.Direct}",
                "--Workshop:SignInsPerMinute=1000",
            },
            WorkingDirectory = Path.Combine(AcceptedFile.Root, "src", "Workshop.Web"),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        process = Process.Start(start)!;
        process.OutputDataReceived += Keep;
        process.ErrorDataReceived += Keep;
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        await WaitUntilReady();
        Passwords = File.ReadLines(Path.Combine(dataFolder, "demo-passwords.txt"))
            .Select(line => line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
            .Where(words => words.Length == 2 && !words[0].StartsWith('#'))
            .ToDictionary(words => words[0], words => words[1], StringComparer.Ordinal);
    }

    public async ValueTask DisposeAsync()
    {
        if (process is { HasExited: false })
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
        }

        process?.Dispose();
        if (database is not null)
        {
            await database.DisposeAsync();
        }

        Directory.Delete(dataFolder, recursive: true);
    }

    private async Task WaitUntilReady()
    {
        using var client = new HttpClient { BaseAddress = Address };
        var waited = Stopwatch.StartNew();
        while (waited.Elapsed < LongestStart && process is { HasExited: false })
        {
            try
            {
                if ((await client.GetAsync("/health/ready")).IsSuccessStatusCode)
                {
                    return;
                }
            }
            catch (HttpRequestException)
            {
                // Not listening yet.
            }

            await Task.Delay(200);
        }

        throw new InvalidOperationException($"The service did not get ready:\n{string.Join('\n', output)}");
    }

    private void Keep(object sender, DataReceivedEventArgs line)
    {
        if (line.Data is not null)
        {
            output.Add(line.Data);
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
