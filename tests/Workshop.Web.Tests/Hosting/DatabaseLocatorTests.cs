using Microsoft.Extensions.Configuration;
using Npgsql;
using Workshop.Tests.Hosting;
using Workshop.Web.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Hosting;

public sealed class DatabaseLocatorTests(PostgresServer server)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_given_connection_is_used_as_it_is_and_serves_for_both_by_default()
    {
        await using var test = await server.CreateDatabaseAsync(Cancellation);
        var given = test.Connections.Direct;

        await using var database = await OpenAsync(("ConnectionStrings:Workshop", given));

        Assert.False(database.IsPrivateCluster);
        Assert.Equal(database.Connections.Service, database.Connections.Direct);
        Assert.Equal(
            test.Name,
            await Sql.ScalarAsync(database.Connections.Service, "SELECT current_database()::text", Cancellation));
    }

    [Fact]
    public async Task A_direct_connection_may_be_given_beside_the_pooled_one()
    {
        await using var test = await server.CreateDatabaseAsync(Cancellation);

        await using var database = await OpenAsync(
            ("ConnectionStrings:Workshop", test.Connections.Service),
            ("ConnectionStrings:WorkshopDirect", test.Connections.Direct));

        Assert.Equal(
            EmbeddedPostgres.ServiceRole,
            await Sql.ScalarAsync(database.Connections.Service, "SELECT current_user::text", Cancellation));
        Assert.NotEqual(
            EmbeddedPostgres.ServiceRole,
            await Sql.ScalarAsync(database.Connections.Direct, "SELECT current_user::text", Cancellation));
    }

    [Fact]
    public async Task A_given_database_that_does_not_answer_is_an_error_and_no_other_is_made()
    {
        using var folder = new TemporaryDataFolder();

        var refused = await Assert.ThrowsAsync<DatabaseUnavailableException>(() => OpenAsync(
            ("ConnectionStrings:Workshop", "Host=127.0.0.1;Port=1;Database=shop;Username=someone;Password=secret"),
            ("Workshop:DataFolder", folder.Path),
            ("Workshop:DatabaseWaitSeconds", "0")));

        Assert.StartsWith(
            "The database that ConnectionStrings:Workshop gives (host 127.0.0.1, port 1, database shop) does not let " +
            "the service in: ",
            refused.Message);
        Assert.DoesNotContain("secret", refused.Message);
        Assert.False(Directory.Exists(folder.Path));
    }

    [Fact]
    public async Task A_service_with_a_given_database_that_does_not_answer_ends_with_one_line()
    {
        using var folder = new TemporaryDataFolder();

        var (exitCode, said) = await HeldDatabase.FailAsync(
            [
                "--ConnectionStrings:Workshop=Host=127.0.0.1;Port=1;Username=someone",
                "--Workshop:DatabaseWaitSeconds=0",
                .. folder.Setting,
            ],
            Cancellation);

        Assert.Equal(1, exitCode);
        Assert.Equal(1, said.Count(character => character == '\n'));
        Assert.False(Directory.Exists(folder.Path));
    }

    [Fact]
    public async Task A_database_that_is_not_there_is_refused_without_waiting()
    {
        await using var test = await server.CreateDatabaseAsync(Cancellation);
        var absent = new NpgsqlConnectionStringBuilder(test.Connections.Direct) { Database = "no_such_workshop" };

        var refused = await Assert.ThrowsAsync<DatabaseUnavailableException>(
            () => OpenAsync(("ConnectionStrings:Workshop", absent.ConnectionString)));

        Assert.Contains("database \"no_such_workshop\" does not exist", refused.Message);
    }

    [Theory]
    [InlineData("ConnectionStrings:Workshop", "", "ConnectionStrings:Workshop names no Host")]
    [InlineData("ConnectionStrings:Workshop", "Database=shop", "ConnectionStrings:Workshop names no Host")]
    [InlineData("ConnectionStrings:Workshop", "Hots=a;Password=secret", "ConnectionStrings:Workshop is not a connection")]
    [InlineData("ConnectionStrings:Workshop", "Host=a;Port=x;Password=secret", "ConnectionStrings:Workshop is not a conn")]
    [InlineData("ConnectionStrings:WorkshopDirect", "Host=a", "ConnectionStrings:Workshop names no Host")]
    public async Task A_connection_that_is_given_wrongly_is_an_error_that_keeps_the_password(
        string setting, string value, string expected)
    {
        var refused = await Assert.ThrowsAsync<DatabaseUnavailableException>(() => OpenAsync((setting, value)));

        Assert.StartsWith(expected, refused.Message);
        Assert.DoesNotContain("secret", refused.Message);
    }

    [Fact]
    public async Task A_wait_that_is_no_number_of_seconds_is_named()
    {
        var refused = await Assert.ThrowsAsync<DatabaseUnavailableException>(() => OpenAsync(
            ("ConnectionStrings:Workshop", "Host=127.0.0.1;Port=1"), ("Workshop:DatabaseWaitSeconds", "-1")));

        Assert.Equal(
            "Workshop:DatabaseWaitSeconds is \"-1\": it is a whole number of seconds, 0 or more.", refused.Message);
    }

    private static Task<WorkshopDatabase> OpenAsync(params (string Setting, string Value)[] settings) =>
        DatabaseLocator.OpenAsync(
            new ConfigurationBuilder()
                .AddInMemoryCollection(settings.ToDictionary(pair => pair.Setting, pair => (string?)pair.Value))
                .Build(),
            null,
            Cancellation);
}
