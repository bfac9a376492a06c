using System.Diagnostics;

namespace Workshop.Web.Tests.Hosting;

/// <summary>A second process that holds the database as a service would.</summary>
internal sealed class HeldDatabase : IDisposable
{
    private readonly Process process;

    private HeldDatabase(Process process, string connection)
    {
        this.process = process;
        Connection = connection;
    }

    public int ProcessId => process.Id;

    /// <summary>The connection as the database's owner.</summary>
    public string Connection { get; }

    /// <summary>Starts the process and waits until it has its database.</summary>
    public static async Task<HeldDatabase> StartAsync(
        string[] settings, Action<ProcessStartInfo>? change, CancellationToken cancellation)
    {
        var process = Launch(settings, change);
        var connection = await process.StandardOutput.ReadLineAsync(cancellation);
        return connection is null
            ? throw new InvalidOperationException(await process.StandardError.ReadToEndAsync(cancellation))
            : new HeldDatabase(process, connection);
    }

    /// <summary>Starts the process where it should fail, and hands back how it ended and what it said.</summary>
    public static async Task<(int ExitCode, string Said)> FailAsync(string[] settings, CancellationToken cancellation)
    {
        using var process = Launch(settings, null);
        process.StandardInput.Close();
        var said = await process.StandardError.ReadToEndAsync(cancellation);
        await process.WaitForExitAsync(cancellation);
        return (process.ExitCode, said);
    }

    /// <summary>Ends the process as a crash would: it has no chance to do anything.</summary>
    public async Task KillAsync(CancellationToken cancellation)
    {
        process.Kill();
        await process.WaitForExitAsync(cancellation);
    }

    public async Task StopAsync(CancellationToken cancellation)
    {
        process.StandardInput.Close();
        await process.WaitForExitAsync(cancellation);
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            process.Kill();
        }

        process.Dispose();
    }

    private static Process Launch(string[] settings, Action<ProcessStartInfo>? change)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, [TestProgram.HoldDatabase, .. settings])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };

        // A killed runtime would leave its diagnostic sockets in the temporary folder.
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        change?.Invoke(start);
        return Process.Start(start)!;
    }
}
