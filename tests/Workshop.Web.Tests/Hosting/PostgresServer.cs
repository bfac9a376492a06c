using System.Collections.Concurrent;
using System.Security.Cryptography;
using Npgsql;
using Workshop.Web.Hosting;
using Xunit;

namespace Workshop.Tests.Hosting;

/// <summary>
/// One PostgreSQL server for the whole test run, started when the first test asks for a database. It is the one named
/// by WORKSHOP_TEST_CONNECTION, or a container where WORKSHOP_TEST_DATABASE is "container", or else a private cluster
/// from local binaries. What is asked for is never replaced by another in silence.
/// </summary>
public sealed class PostgresServer : IAsyncLifetime
{
    private readonly ConcurrentDictionary<string, Lazy<Task<string>>> templates = new();
    private readonly Lazy<Task<RunningServer>> running = new(StartAsync);
    private readonly string run = RandomNumberGenerator.GetHexString(8, lowercase: true);
    private int databases;

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    /// <summary>An empty database of the test's own.</summary>
    public Task<TestDatabase> CreateDatabaseAsync(CancellationToken cancellation = default) =>
        CreateAsync("template1", cancellation);

    /// <summary>
    /// A copy of a template database, which the first caller prepares (migrations, seed rows) over the direct
    /// connection and every later one only copies.
    /// </summary>
    /// <param name="template">Names what the callback makes; the callback runs once for each name.</param>
    /// <param name="prepareTemplate">Fills the empty template over the connection string that it is given.</param>
    /// <param name="cancellation">Ends the copying, not the preparation, which others may be waiting for.</param>
    public async Task<TestDatabase> CreateFromTemplateAsync(
        string template, Func<string, Task> prepareTemplate, CancellationToken cancellation = default)
    {
        var prepared = templates.GetOrAdd(
            template, _ => new Lazy<Task<string>>(() => PrepareTemplateAsync(prepareTemplate)));
        return await CreateAsync(await prepared.Value.WaitAsync(cancellation), cancellation);
    }

    public async ValueTask DisposeAsync()
    {
        if (!running.IsValueCreated || !running.Value.IsCompletedSuccessfully)
        {
            return;
        }

        var server = await running.Value;
        foreach (var template in templates.Values.Where(template => template.Value.IsCompletedSuccessfully))
        {
            await server.ExecuteAsync($"DROP DATABASE IF EXISTS {await template.Value} WITH (FORCE)", default);
        }

        await server.DisposeAsync();
    }

    private async Task<TestDatabase> CreateAsync(string template, CancellationToken cancellation)
    {
        var server = await running.Value.WaitAsync(cancellation);
        var name = $"workshop_test_{run}_{Interlocked.Increment(ref databases)}";
        await server.ExecuteAsync($"CREATE DATABASE {name} TEMPLATE {template} {server.OwnerClause}", cancellation);
        return new TestDatabase(
            name,
            server.ConnectionsTo(name),
            () => server.ExecuteAsync($"DROP DATABASE IF EXISTS {name} WITH (FORCE)", default));
    }

    private async Task<string> PrepareTemplateAsync(Func<string, Task> prepare)
    {
        var database = await CreateAsync("template1", CancellationToken.None);
        var connection = new NpgsqlConnectionStringBuilder(database.Connections.Direct) { Pooling = false };
        await prepare(connection.ConnectionString);

        // A database with a session on it cannot be copied.
        var server = await running.Value;
        await server.ExecuteAsync($"ALTER DATABASE {database.Name} ALLOW_CONNECTIONS false", default);
        await server.ExecuteAsync(
            $"SELECT pg_terminate_backend(pid, 5000) FROM pg_stat_activity WHERE datname = '{database.Name}'", default);
        return database.Name;
    }

    private static async Task<RunningServer> StartAsync()
    {
        if (Environment.GetEnvironmentVariable("WORKSHOP_TEST_CONNECTION") is { Length: > 0 } given)
        {
            return await RunningServer.OfOneLoginAsync(given, null);
        }

        return Environment.GetEnvironmentVariable("WORKSHOP_TEST_DATABASE") switch
        {
            "container" => await ContainerPostgres.StartAsync(),
            null or "" => await RunningServer.OfPrivateClusterAsync(),
            var other => throw new InvalidOperationException(
                $"WORKSHOP_TEST_DATABASE is \"{other}\": it may be \"container\", or be unset for a private cluster."),
        };
    }
}

/// <summary>A database that goes when its test class is done with it.</summary>
public sealed class TestDatabase(string name, DatabaseConnections connections, Func<Task> drop) : IAsyncDisposable
{
    public string Name { get; } = name;

    public DatabaseConnections Connections { get; } = connections;

    public async ValueTask DisposeAsync() => await drop();
}
