using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Xunit;

namespace Workshop.Browser.Tests.Hosting;

/// <summary>The service as its own process, on a database and a data folder of its own, with the real clock.</summary>
public abstract class ServiceProcess(PostgresServer server, params string[] settings) : IAsyncLifetime
{
    private static readonly TimeSpan LongestStart = TimeSpan.FromMinutes(3);

    private readonly List<string> output = [];
    private TestDatabase? database;
    private Process? process;

    public Uri Address { get; private set; } = new("http://127.0.0.1");

    protected string DataFolder { get; } = Directory.CreateTempSubdirectory("workshop-").FullName;

    /// <summary>What it printed so far, line by line.</summary>
    protected IReadOnlyList<string> Output
    {
        get
        {
            lock (output)
            {
                return [.. output];
            }
        }
    }

    public virtual async ValueTask InitializeAsync()
    {
        database = await server.CreateDatabaseAsync();
        Address = new Uri($"http://127.0.0.1:{FreePort()}");
        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = Path.Combine(AcceptedFile.Root, "src", "Workshop.Web"),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        string[] arguments =
        [
            typeof(WorkshopDbContext).Assembly.Location,
            $"--urls={Address}",
            $"--Workshop:DataFolder={DataFolder}",
            $"--ConnectionStrings:Workshop={database.Connections.Service}",
            $"--ConnectionStrings:WorkshopDirect={database.Connections.Direct}",
            "--Workshop:SignInsPerMinute=1000",
            .. settings,
        ];
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        process = Process.Start(start)!;
        process.OutputDataReceived += Keep;
        process.ErrorDataReceived += Keep;
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        await WaitUntilReady();
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

        Directory.Delete(DataFolder, recursive: true);
        GC.SuppressFinalize(this);
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

        throw new InvalidOperationException($"The service did not get ready:\n{string.Join('\n', Output)}");
    }

    private void Keep(object sender, DataReceivedEventArgs line)
    {
        if (line.Data is not null)
        {
            lock (output)
            {
                output.Add(line.Data);
            }
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
