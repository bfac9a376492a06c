using Npgsql;
using Workshop.Tests.Hosting;
using Workshop.Web.Hosting;
using Xunit;

[assembly: AssemblyFixture(typeof(PostgresServer))]

namespace Workshop.Web.Tests.Hosting;

public sealed class PostgresServerTests(PostgresServer server)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_template_is_prepared_once_and_each_copy_goes_its_own_way()
    {
        var prepared = 0;
        async Task Prepare(string connection)
        {
            prepared++;
            await ExecuteAsync(connection, "CREATE TABLE shims (micrometres int); INSERT INTO shims VALUES (2500)");
        }

        var copies = await Task.WhenAll(Enumerable.Range(0, 4)
            .Select(_ => server.CreateFromTemplateAsync("prepared once", Prepare, Cancellation)));
        await ExecuteAsync(copies[0].Connections.Direct, "INSERT INTO shims VALUES (2525)");

        Assert.Equal(1, prepared);
        Assert.Equal(2L, await ScalarAsync(copies[0].Connections.Direct, "SELECT count(*) FROM shims"));
        Assert.Equal(1L, await ScalarAsync(copies[1].Connections.Direct, "SELECT count(*) FROM shims"));
        foreach (var copy in copies)
        {
            await copy.DisposeAsync();
        }

        var gone = await Assert.ThrowsAsync<PostgresException>(
            () => ScalarAsync(copies[1].Connections.Direct, "SELECT 1"));
        Assert.Equal(PostgresErrorCodes.InvalidCatalogName, gone.SqlState);
    }

    [Fact]
    public async Task The_service_may_do_what_was_granted_to_it_and_the_owner_everything()
    {
        await using var database = await server.CreateDatabaseAsync(Cancellation);
        await ExecuteAsync(
            database.Connections.Direct,
            $"CREATE TABLE readings (id int); GRANT SELECT, INSERT ON readings TO {EmbeddedPostgres.ServiceRole}");

        await ExecuteAsync(database.Connections.Service, "INSERT INTO readings VALUES (1)");
        var refused = await Assert.ThrowsAsync<PostgresException>(
            () => ExecuteAsync(database.Connections.Service, "DELETE FROM readings"));

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
        Assert.Equal(1L, await ScalarAsync(database.Connections.Direct, "SELECT count(*) FROM readings"));
    }

    [Fact]
    public async Task The_server_speaks_utf8_sorts_by_code_point_and_may_exclude_overlaps()
    {
        await using var database = await server.CreateDatabaseAsync(Cancellation);

        Assert.Equal("UTF8", await ScalarAsync(database.Connections.Direct, "SHOW server_encoding"));
        Assert.Equal(
            "Z,a,é",
            await ScalarAsync(
                database.Connections.Direct,
                "SELECT string_agg(x, ',' ORDER BY x COLLATE \"C\") FROM unnest(ARRAY['é', 'a', 'Z']) x"));
        await ExecuteAsync(
            database.Connections.Direct,
            """
            CREATE EXTENSION btree_gist;
            CREATE TABLE occupancies (bay int, span tstzrange, EXCLUDE USING gist (bay WITH =, span WITH &&));
            """);
    }

    private static Task ExecuteAsync(string connection, string sql) => Sql.ExecuteAsync(connection, sql, Cancellation);

    private static Task<object?> ScalarAsync(string connection, string sql) =>
        Sql.ScalarAsync(connection, sql, Cancellation);
}
