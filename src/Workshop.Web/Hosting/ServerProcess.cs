using System.Diagnostics;
using System.Globalization;

namespace Workshop.Web.Hosting;

/// <summary>What to start: the programs, where the socket goes, whether the data may be lost.</summary>
internal sealed record ServerProgram(
    string Binaries, string SocketFolder, bool IsEphemeral, TimeSpan WaitForStart, TimeSpan WaitForStopping);

/// <summary>
/// A running server under a shell that holds the other end of a pipe. When the pipe closes, be it by
/// <see cref="DisposeAsync"/> or because this process was killed, the shell stops the server fast.
/// </summary>
internal sealed class ServerProcess : IAsyncDisposable
{
    // The shell ignores what a terminal or a service manager sends to all processes at once: the service first ends
    // what it has in hand, and only then closes the pipe. setsid keeps a Ctrl-C from reaching the server.
    private const string Script = """
        set -u
        umask 077
        bin=$1 home=$2 socket=$3 ephemeral=$4
        shift 4
        trap '' HUP INT TERM
        [ ! -e "$home/log" ] || mv -f "$home/log" "$home/log.before"
        exec 3<&0 </dev/null 2>>"$home/log"
        "$bin/postgres" -D "$home/data" -k "$socket" "$@" >&2 3<&- &
        server=$!
        echo "$server"
        exec >&2
        { while read -r _; do :; done; kill -INT "$server"; } <&3 3<&- &
        watcher=$!
        exec 3<&-
        wait "$server"
        code=$?
        kill -KILL "$watcher" 2>/dev/null
        if [ "$code" = 0 ]; then
          [ "$socket" = "$home" ] || rmdir "$socket"
          cd /
          [ "$ephemeral" = no ] || rm -rf "$home"
        fi
        exit "$code"
        """;

    private readonly Process shell;

    private ServerProcess(Process shell, int serverProcessId)
    {
        this.shell = shell;
        ServerProcessId = serverProcessId;
        Exited = shell.WaitForExitAsync();
    }

    public int ServerProcessId { get; }

    /// <summary>Ends when the server has ended, for whatever reason.</summary>
    public Task Exited { get; }

    public static async Task<ServerProcess> StartAsync(
        ClusterFolder folder, ServerProgram program, CancellationToken cancellation)
    {
        var shell = Process.Start(folder.User.Command(
            "setsid",
            [
                "/bin/sh", "-c", Script, "sh", program.Binaries, folder.Home, program.SocketFolder,
                program.IsEphemeral ? "yes" : "no", .. Settings(program.IsEphemeral),
            ]))!;
        var pid = await shell.StandardOutput.ReadLineAsync(cancellation);
        var server = new ServerProcess(shell, int.TryParse(pid, CultureInfo.InvariantCulture, out var number) ? number : 0);
        try
        {
            await server.WaitUntilReadyAsync(folder, program.WaitForStart, cancellation);
            return server;
        }
        catch
        {
            await server.DisposeAsync();
            throw;
        }
    }

    public async ValueTask DisposeAsync()
    {
        try
        {
            shell.StandardInput.Close();
        }
        catch (IOException)
        {
            // The shell is gone already.
        }

        await Exited;
        shell.Dispose();
    }

    private async Task WaitUntilReadyAsync(ClusterFolder folder, TimeSpan limit, CancellationToken cancellation)
    {
        var waited = Stopwatch.StartNew();
        while (!folder.IsReady(ServerProcessId))
        {
            if (Exited.IsCompleted || waited.Elapsed > limit)
            {
                var failure = Exited.IsCompleted ? "stopped at once" : $"was not ready within {limit.TotalSeconds:0} s";
                throw new DatabaseUnavailableException(
                    $"PostgreSQL in {folder.Home} {failure}: {folder.LastComplaint()} (more in {folder.Log})");
            }

            await Task.Delay(10, cancellation);
        }
    }

    private static IEnumerable<string> Settings(bool isEphemeral)
    {
        string[] always =
        [
            "listen_addresses=", "unix_socket_permissions=0700", "port=5432", "max_connections=200", "jit=off",
            "timezone=UTC", "log_timezone=UTC", "log_checkpoints=off",
        ];
        string[] whereLossIsNoMatter =
        [
            "fsync=off", "synchronous_commit=off", "full_page_writes=off", "wal_level=minimal", "max_wal_senders=0",
        ];
        return always.Concat(isEphemeral ? whereLossIsNoMatter : []).SelectMany(setting => new[] { "-c", setting });
    }
}
