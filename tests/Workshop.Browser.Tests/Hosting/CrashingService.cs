using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;

namespace Workshop.Browser.Tests.Hosting;

/// <summary>
/// The demo with a PostgreSQL of its own, which it starts and keeps as a newcomer's does, at an address that stays: it, or its
/// PostgreSQL, is killed without warning as often as somebody wants, and started again.
/// </summary>
public sealed class CrashingService : IAsyncDisposable
{
    private static readonly TimeSpan LongestStart = TimeSpan.FromMinutes(5);

    private readonly DirectoryInfo parent = Directory.CreateTempSubdirectory("workshop-crash-");
    private readonly List<string> output = [];
    private readonly HttpClient client;
    private Process? process;

    public CrashingService()
    {
        // The server's own user has to get through to its folder.
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(parent.FullName, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute);
        }

        DataFolder = Path.Combine(parent.FullName, "data");
        Address = new Uri($"http://127.0.0.1:{FreePort()}");
        client = new HttpClient { BaseAddress = Address, Timeout = TimeSpan.FromSeconds(20) };
    }

    public Uri Address { get; }

    public string DataFolder { get; }

    /// <summary>How often PostgreSQL was killed since the service was started; it starts it again a few times only.</summary>
    public int PostgresKills { get; private set; }

    public string PasswordOf(string account) => File.ReadLines(Path.Combine(DataFolder, "demo-passwords.txt"))
        .Select(line => line.Split(' ')).Single(words => words[0] == account)[1];

    /// <summary>Starts it and waits until it answers.</summary>
    /// <exception cref="InvalidOperationException">It ends, or does not get ready in time.</exception>
    public async Task Start()
    {
        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = Path.Combine(AcceptedFile.Root, "src", "Workshop.Web"),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        string[] arguments =
        [
            typeof(WorkshopDbContext).Assembly.Location, $"--urls={Address}", $"--Workshop:DataFolder={DataFolder}", "--Workshop:Demo=true",
            "--Workshop:SignInsPerMinute=100000", "--Workshop:LogLevel=Warning",
        ];
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        PostgresKills = 0;
        process = Process.Start(start)!;
        process.OutputDataReceived += Keep;
        process.ErrorDataReceived += Keep;
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        await Ready();
    }

    /// <summary>Waits until the service and its database answer.</summary>
    public async Task Ready()
    {
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
            catch (Exception fault) when (fault is HttpRequestException or TaskCanceledException)
            {
                // Not listening yet.
            }

            await Task.Delay(100);
        }

        throw new InvalidOperationException($"The service did not get ready:\n{string.Join('\n', output.TakeLast(40))}");
    }

    /// <summary>SIGKILL to the service itself; its PostgreSQL is left to see that nobody holds it any more.</summary>
    public async Task Kill()
    {
        process!.Kill(entireProcessTree: false);
        await process.WaitForExitAsync();
        process.Dispose();
    }

    /// <summary>SIGKILL to PostgreSQL; the service starts it again.</summary>
    public void KillPostgres()
    {
        PostgresKills++;
        var id = int.Parse(File.ReadLines(Path.Combine(DataFolder, "postgres", "data", "postmaster.pid")).First(), CultureInfo.InvariantCulture);
        using var postmaster = Process.GetProcessById(id);
        postmaster.Kill();
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        if (process is { HasExited: false })
        {
            using var stop = Process.Start("kill", ["-TERM", process.Id.ToString(CultureInfo.InvariantCulture)]);
            await process.WaitForExitAsync();
        }

        process?.Dispose();
        parent.Delete(recursive: true);
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
