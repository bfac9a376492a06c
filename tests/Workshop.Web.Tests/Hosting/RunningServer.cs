using Npgsql;
using Workshop.Web.Hosting;

namespace Workshop.Tests.Hosting;

/// <summary>The server of a test run, wherever it came from, and how to reach a database on it.</summary>
internal sealed class RunningServer : IAsyncDisposable
{
    private readonly NpgsqlDataSource maintenance;
    private readonly IAsyncDisposable? owned;

    private RunningServer(
        string maintenance, string ownerClause, Func<string, DatabaseConnections> connectionsTo, IAsyncDisposable? owned)
    {
        this.maintenance = NpgsqlDataSource.Create(maintenance);
        this.owned = owned;
        OwnerClause = ownerClause;
        ConnectionsTo = connectionsTo;
    }

    public string OwnerClause { get; }

    public Func<string, DatabaseConnections> ConnectionsTo { get; }

    public static async Task<RunningServer> OfPrivateClusterAsync()
    {
        var cluster = await EmbeddedPostgres.StartAsync(
            EmbeddedPostgresOptions.Ephemeral(), null, CancellationToken.None);
        return new RunningServer(
            cluster.SuperuserConnection, $"OWNER {EmbeddedPostgres.OwnerRole}", cluster.ConnectionsTo, cluster);
    }

    /// <summary>
    /// A server with one login for everything: it owns the databases, and plays the service by taking its role.
    /// </summary>
    public static async Task<RunningServer> OfOneLoginAsync(string connection, IAsyncDisposable? owned)
    {
        var server = new RunningServer(connection, "", ConnectionsOfOneLogin, owned);
        await server.ExecuteAsync(
            $"""
             DO $$
             BEGIN
               IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = '{EmbeddedPostgres.ServiceRole}') THEN
                 CREATE ROLE {EmbeddedPostgres.ServiceRole};
               END IF;
               IF NOT pg_has_role('{EmbeddedPostgres.ServiceRole}', 'MEMBER') THEN
                 GRANT {EmbeddedPostgres.ServiceRole} TO CURRENT_USER;
               END IF;
             END $$;
             """,
            default);
        return server;

        DatabaseConnections ConnectionsOfOneLogin(string database)
        {
            var direct = new NpgsqlConnectionStringBuilder(connection) { Database = database };
            var service = new NpgsqlConnectionStringBuilder(direct.ConnectionString)
            {
                Options = $"-c role={EmbeddedPostgres.ServiceRole}",
            };
            return new DatabaseConnections(service.ConnectionString, direct.ConnectionString);
        }
    }

    public async Task ExecuteAsync(string sql, CancellationToken cancellation)
    {
        await using var command = maintenance.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(cancellation);
    }

    public async ValueTask DisposeAsync()
    {
        await maintenance.DisposeAsync();
        if (owned is not null)
        {
            await owned.DisposeAsync();
        }
    }
}
