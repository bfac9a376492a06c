using System.Globalization;
using System.Runtime.Versioning;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Workshop.Web.Hosting;

/// <summary>
/// Where a private cluster lives. The data folder belongs to the service and holds <c>in-use</c> (locked for as long
/// as a service runs on it, whose number is in <c>in-use-by</c>) and <c>pgpass</c> (the password, readable by its
/// owner only). Inside it, <c>postgres/</c> belongs to the server's user alone: the cluster, its log, and, where the
/// path is short enough, its socket.
/// </summary>
internal sealed partial class ClusterFolder : IAsyncDisposable
{
    // sockaddr_un holds 108 bytes with the closing zero; the socket's own name takes 17 with its slash.
    private const int LongestSocketFolder = 107 - 17;

    private readonly FileStream? inUse;

    private ClusterFolder(ServerUser user, string home, string password, FileStream? inUse)
    {
        User = user;
        Home = home;
        Password = password;
        this.inUse = inUse;
    }

    public ServerUser User { get; }

    public string Home { get; }

    public string Password { get; }

    public string Data => Path.Combine(Home, "data");

    public string Log => Path.Combine(Home, "log");

    public bool IsInitialised => Directory.Exists(Data);

    private string PidFile => Path.Combine(Data, "postmaster.pid");

    [SupportedOSPlatform("linux")]
    public static async Task<ClusterFolder> OpenAsync(
        ServerUser user, EmbeddedPostgresOptions options, CancellationToken cancellation)
    {
        if (options.DataFolder is null)
        {
            var made = await user.RunAsync(
                "mktemp", ["-d", Path.Combine(Path.GetTempPath(), "workshop-pg.XXXXXXXX")], null, cancellation);
            made.MustSucceed("No folder can be made for PostgreSQL");
            return new ClusterFolder(user, made.Output.TrimEnd('\n'), NewPassword(), null);
        }

        CreateDataFolder(options.DataFolder);
        var inUse = Lock(options.DataFolder);
        try
        {
            var home = Path.Combine(options.DataFolder, "postgres");
            await user.OwnFolderAsync(home, cancellation);
            return new ClusterFolder(user, home, KeptPassword(options.DataFolder), inUse);
        }
        catch
        {
            await inUse.DisposeAsync();
            throw;
        }
    }

    /// <summary>The major version that made the cluster; null where there is none yet.</summary>
    public int? Version()
    {
        var file = Path.Combine(Data, "PG_VERSION");
        return File.Exists(file)
            ? int.Parse(File.ReadAllText(file).Split('.')[0], CultureInfo.InvariantCulture)
            : null;
    }

    /// <summary>
    /// Makes the cluster under another name and renames it when it is whole, so that one killed halfway leaves nothing
    /// that looks like a cluster.
    /// </summary>
    public async Task InitialiseAsync(string binaries, bool synced, CancellationToken cancellation)
    {
        const string script = """
            set -eu
            umask 077
            bin=$1 home=$2 sync=$3
            rm -rf "$home"/new.*
            new=$(mktemp -d "$home/new.XXXXXXXX")
            cat >"$new/password"
            "$bin/initdb" -D "$new/data" --pwfile="$new/password" --username=postgres --auth=scram-sha-256 \
              --encoding=UTF8 --locale=C.UTF-8 --data-checksums $sync >"$new/out"
            mv -T "$new/data" "$home/data"
            rm -rf "$new"
            """;
        var made = await User.RunAsync(
            "/bin/sh", ["-c", script, "sh", binaries, Home, synced ? "" : "--no-sync"], Password, cancellation);
        made.MustSucceed($"No cluster can be made in {Home}");
    }

    /// <summary>
    /// A folder for the socket that nobody but the server's user can enter: the cluster's own, or, where that path is
    /// too long or holds a character that a connection string would take for something else, a new one under /tmp.
    /// </summary>
    public async Task<string> SocketFolderAsync(CancellationToken cancellation)
    {
        if (Encoding.UTF8.GetByteCount(Home) <= LongestSocketFolder && PlainPath().IsMatch(Home))
        {
            return Home;
        }

        var made = await User.RunAsync("mktemp", ["-d", "/tmp/workshop.XXXXXXXX"], null, cancellation);
        made.MustSucceed("No folder can be made for the socket of PostgreSQL");
        return made.Output.TrimEnd('\n');
    }

    /// <summary>The process that runs a server on this cluster now, or null.</summary>
    public int? RunningServer()
    {
        var pid = PidFileLines() is [var first, ..] && int.TryParse(first, out var number) ? number : (int?)null;
        return pid is { } running && IsServerOfThisCluster(running) ? running : null;
    }

    /// <summary>Whether that server says that it takes connections.</summary>
    public bool IsReady(int server) =>
        PidFileLines() is { Length: >= 8 } lines
        && lines[0] == server.ToString(CultureInfo.InvariantCulture)
        && lines[7].StartsWith("ready", StringComparison.Ordinal);

    /// <summary>
    /// After a crash, PostgreSQL takes the process number in its pid file for a running server as soon as any process
    /// of the same user has that number again. Such a number is replaced by one that no process can have; the file
    /// stays, since its other lines let PostgreSQL see for itself whether old server processes are left.
    /// </summary>
    public async Task ForgetReusedPidAsync(CancellationToken cancellation)
    {
        if (!File.Exists(PidFile) || RunningServer() is not null)
        {
            return;
        }

        var replaced = await User.RunAsync("sed", ["-i", "1s/.*/2147483647/", PidFile], null, cancellation);
        replaced.MustSucceed($"The pid file {PidFile} of a server that is gone cannot be corrected");
    }

    /// <summary>Why the server ended, in its own words.</summary>
    public string LastComplaint() =>
        LogLines().LastOrDefault(line => line.Contains("FATAL", StringComparison.Ordinal))
        ?? LogLines().LastOrDefault(line => line.Length > 0)
        ?? "it left no log";

    /// <summary>
    /// Whether the last server refused to start because processes of one before it, killed a moment ago, still hold the
    /// cluster's memory or its pid file. They go by themselves.
    /// </summary>
    public bool WasHeldByServerBefore() =>
        LogLines().Any(line => line.Contains("pre-existing shared memory block", StringComparison.Ordinal)
            || line.Contains("lock file \"postmaster.pid\" already exists", StringComparison.Ordinal));

    /// <summary>Lets others use a lasting folder, and removes one that was made for this run.</summary>
    public async ValueTask DisposeAsync()
    {
        if (inUse is not null)
        {
            await inUse.DisposeAsync();
        }
        else
        {
            await User.RunAsync("rm", ["-rf", Home], null, CancellationToken.None);
        }
    }

    private IEnumerable<string> LogLines() => File.Exists(Log) ? File.ReadLines(Log) : [];

    private string[] PidFileLines()
    {
        try
        {
            return File.ReadAllLines(PidFile);
        }
        catch (IOException)
        {
            return [];
        }
    }

    private bool IsServerOfThisCluster(int pid)
    {
        try
        {
            return File.ReadAllText($"/proc/{pid}/cmdline").Split('\0').Contains(Data);
        }
        catch (IOException)
        {
            return false;
        }
    }

    // Root's folder must let the server's user pass to its own folder within; nobody can list it.
    [SupportedOSPlatform("linux")]
    private static void CreateDataFolder(string folder)
    {
        const UnixFileMode mine = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
        const UnixFileMode passable = mine | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;
        try
        {
            if (!Directory.Exists(folder))
            {
                Directory.CreateDirectory(folder);
                File.SetUnixFileMode(folder, Environment.IsPrivilegedProcess ? passable : mine);
            }
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            throw CannotWrite(folder, refused);
        }
    }

    // The lock goes with its process, however that ends. Its holder's number stands in a file beside it, since a locked
    // file cannot be read.
    private static FileStream Lock(string folder)
    {
        var (path, holder) = (Path.Combine(folder, "in-use"), Path.Combine(folder, "in-use-by"));
        FileStream file;
        try
        {
            file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (UnauthorizedAccessException refused)
        {
            throw CannotWrite(folder, refused);
        }
        catch (IOException held) when (File.Exists(holder))
        {
            throw new DatabaseUnavailableException(
                $"The data folder {folder} is in use by process {File.ReadAllText(holder).Trim()}: stop it, or name " +
                "another folder with Workshop:DataFolder.",
                held);
        }

        File.WriteAllText(holder, $"{Environment.ProcessId}\n");
        return file;
    }

    private static DatabaseUnavailableException CannotWrite(string folder, Exception refused) => new(
        $"The user {Environment.UserName} cannot write to the data folder {folder}: name another with " +
        "Workshop:DataFolder.",
        refused);

    // In the form of a password file of PostgreSQL's own tools, so that they can use it as it stands.
    [SupportedOSPlatform("linux")]
    private static string KeptPassword(string dataFolder)
    {
        const string anywhere = "*:*:*:*:";
        var path = Path.Combine(dataFolder, "pgpass");
        if (File.Exists(path) && File.ReadAllText(path).Trim() is { Length: > 0 } line)
        {
            return line[anywhere.Length..];
        }

        var password = NewPassword();
        using var file = new FileStream(path, new FileStreamOptions
        {
            Mode = FileMode.Create,
            Access = FileAccess.Write,
            UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
        });
        file.Write(Encoding.ASCII.GetBytes($"{anywhere}{password}\n"));
        file.Flush(flushToDisk: true);
        return password;
    }

    private static string NewPassword() => RandomNumberGenerator.GetHexString(40, lowercase: true);

    [GeneratedRegex(@"^[A-Za-z0-9/._+-]+$")]
    private static partial Regex PlainPath();
}
