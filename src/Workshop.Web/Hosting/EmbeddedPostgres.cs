using System.Diagnostics;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace Workshop.Web.Hosting;

/// <summary>
/// A private PostgreSQL cluster, reached by a Unix socket only, that lives no longer than this process. Nobody else on
/// the machine can enter the socket's folder, and who could would still need the password.
/// </summary>
public sealed class EmbeddedPostgres : IAsyncDisposable
{
    /// <summary>Owns the database and its tables, may create databases and roles; migrations run as this one.</summary>
    public const string OwnerRole = "workshop_owner";

    /// <summary>What the service itself signs in as; has the rights that migrations grant to it and no others.</summary>
    public const string ServiceRole = "workshop_service";

    public const string DatabaseName = "workshop";

    private const int MostRestarts = 5;

    private readonly ClusterFolder folder;
    private readonly ServerProgram program;
    private readonly ILogger logger;
    private readonly CancellationTokenSource stopping = new();
    private ServerProcess server;
    private Task supervision = Task.CompletedTask;

    private EmbeddedPostgres(ClusterFolder folder, ServerProgram program, ServerProcess server, ILogger logger)
    {
        this.folder = folder;
        this.program = program;
        this.server = server;
        this.logger = logger;
    }

    /// <summary>The number of the server's process.</summary>
    public int ServerProcessId => server.ServerProcessId;

    /// <summary>The connections to the service's own database.</summary>
    public DatabaseConnections Connections => ConnectionsTo(DatabaseName);

    /// <summary>The connection of the cluster's superuser, to make and drop what the owner may not.</summary>
    public string SuperuserConnection => Connection("postgres", "postgres");

    /// <summary>
    /// Starts the cluster, made first where there is none, and waits until it takes connections.
    /// </summary>
    /// <exception cref="DatabaseUnavailableException">It cannot be started; the message says why in one line.</exception>
    public static async Task<EmbeddedPostgres> StartAsync(
        EmbeddedPostgresOptions options, ILogger? logger, CancellationToken cancellation)
    {
        if (!OperatingSystem.IsLinux())
        {
            throw new DatabaseUnavailableException(
                "A private PostgreSQL cluster is made on Linux only: give ConnectionStrings:Workshop.");
        }

        logger ??= NullLogger.Instance;
        var user = await ServerUser.FindAsync(cancellation);
        var anyVersion = await options.Binaries.FindAsync(null, cancellation);
        var folder = await ClusterFolder.OpenAsync(user, options, cancellation);
        ServerProcess? server = null;
        try
        {
            var binaries = folder.Version() is { } version
                ? await options.Binaries.FindAsync(version, cancellation)
                : anyVersion;
            if (!folder.IsInitialised)
            {
                await folder.InitialiseAsync(binaries, synced: !options.IsEphemeral, cancellation);
            }

            var program = new ServerProgram(
                binaries, await folder.SocketFolderAsync(cancellation), options.IsEphemeral, options.WaitForStart,
                options.WaitForStopping);
            server = await StartServerAsync(folder, program, logger, cancellation);
            var cluster = new EmbeddedPostgres(folder, program, server, logger);
            await cluster.EnsureRolesAndDatabaseAsync(cancellation);
            if (!options.IsEphemeral)
            {
                cluster.supervision = cluster.SuperviseAsync();
            }

            return cluster;
        }
        catch
        {
            if (server is not null)
            {
                await server.DisposeAsync();
            }

            await folder.DisposeAsync();
            throw;
        }
    }

    /// <summary>The same two connections, to another database of this cluster.</summary>
    public DatabaseConnections ConnectionsTo(string database) =>
        new(Connection(ServiceRole, database), Connection(OwnerRole, database));

    /// <summary>Stops the server as soon as what it has in hand is rolled back or written.</summary>
    public async ValueTask DisposeAsync()
    {
        await stopping.CancelAsync();
        await supervision;
        await server.DisposeAsync();
        await folder.DisposeAsync();
        stopping.Dispose();
    }

    private string Connection(string role, string database) => new NpgsqlConnectionStringBuilder
    {
        Host = program.SocketFolder,
        Database = database,
        Username = role,
        Password = folder.Password,
    }.ConnectionString;

    // A server whose service was killed needs a moment to stop, and so do the processes of one that was itself killed.
    private static async Task<ServerProcess> StartServerAsync(
        ClusterFolder folder, ServerProgram program, ILogger logger, CancellationToken cancellation)
    {
        var waited = Stopwatch.StartNew();
        while (true)
        {
            await WaitForRunningServerAsync(folder, program.WaitForStopping, logger, cancellation);
            await folder.ForgetReusedPidAsync(cancellation);
            try
            {
                return await ServerProcess.StartAsync(folder, program, cancellation);
            }
            catch (DatabaseUnavailableException)
                when (folder.WasHeldByServerBefore() && waited.Elapsed < program.WaitForStopping)
            {
                await Task.Delay(250, cancellation);
            }
        }
    }

    private static async Task WaitForRunningServerAsync(
        ClusterFolder folder, TimeSpan limit, ILogger logger, CancellationToken cancellation)
    {
        var waited = Stopwatch.StartNew();
        for (var isFirst = true; folder.RunningServer() is { } running; isFirst = false)
        {
            if (waited.Elapsed > limit)
            {
                throw new DatabaseUnavailableException(
                    $"The data folder {Path.GetDirectoryName(folder.Home)} is in use by process {running}, a " +
                    $"PostgreSQL server that did not stop within {limit.TotalSeconds:0} s: stop it, or name another " +
                    "folder with Workshop:DataFolder.");
            }

            if (isFirst)
            {
                logger.LogInformation("Waiting for PostgreSQL process {Server} of an earlier run to stop", running);
            }

            await Task.Delay(50, cancellation);
        }
    }

    private async Task EnsureRolesAndDatabaseAsync(CancellationToken cancellation)
    {
        await using var source = NpgsqlDataSource.Create(
            new NpgsqlConnectionStringBuilder(SuperuserConnection) { Pooling = false }.ConnectionString);
        await using var connection = await source.OpenConnectionAsync(cancellation);
        foreach (var (role, rights) in new[] { (OwnerRole, "CREATEDB CREATEROLE"), (ServiceRole, "") })
        {
            await CreateUnlessThereAsync(
                connection,
                $"SELECT 1 FROM pg_roles WHERE rolname = '{role}'",
                $"CREATE ROLE {role} LOGIN {rights} PASSWORD '{folder.Password}'",
                cancellation);
        }

        await CreateUnlessThereAsync(
            connection,
            $"SELECT 1 FROM pg_database WHERE datname = '{DatabaseName}'",
            $"CREATE DATABASE {DatabaseName} OWNER {OwnerRole}",
            cancellation);
    }

    private static async Task CreateUnlessThereAsync(
        NpgsqlConnection connection, string question, string creation, CancellationToken cancellation)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = question;
        if (await command.ExecuteScalarAsync(cancellation) is null)
        {
            command.CommandText = creation;
            await command.ExecuteNonQueryAsync(cancellation);
        }
    }

    // A server that dies under a living service is started again: what was acknowledged is in its log on disk.
    private async Task SuperviseAsync()
    {
        for (var restarts = 0; restarts < MostRestarts; restarts++)
        {
            try
            {
                await server.Exited.WaitAsync(stopping.Token);
                logger.LogError("PostgreSQL process {Server} died and is started again", server.ServerProcessId);
                await server.DisposeAsync();
                server = await StartServerAsync(folder, program, logger, stopping.Token);
                logger.LogInformation("PostgreSQL runs again as process {Server}", server.ServerProcessId);
            }
            catch (OperationCanceledException)
            {
                return;
            }
            catch (DatabaseUnavailableException failure)
            {
                logger.LogError(failure, "PostgreSQL cannot be started again");
                return;
            }
        }

        logger.LogError("PostgreSQL died {Restarts} times and is left as it is", MostRestarts);
    }
}
