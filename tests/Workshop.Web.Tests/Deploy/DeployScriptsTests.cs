using System.Diagnostics;
using Microsoft.Extensions.Configuration;
using Npgsql;
using Workshop.Web.Hosting;
using Workshop.Web.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Deploy;

public sealed class DeployScriptsTests
{
    private static readonly string Repository = FindRepository();

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_backed_up_comes_back_and_what_was_there_before_stays_beside_it()
    {
        using var folder = new TemporaryDataFolder();
        await using var cluster = await StartAsync(folder);
        await using var service = NpgsqlDataSource.Create(cluster.Connections.Direct);
        await ExecuteAsync(
            service,
            $"""
             CREATE TABLE readings (micrometres int NOT NULL);
             INSERT INTO readings VALUES (150), (160);
             GRANT SELECT ON readings TO {EmbeddedPostgres.ServiceRole};
             """);
        var file = Path.Combine(folder.Path, "monday's backup");

        var (backupCode, backupSaid) = await RunAsync("backup", "--data-folder", folder.Path, file);
        await ExecuteAsync(service, "DELETE FROM readings");
        var (restoreCode, restoreSaid) = await RunAsync("restore", "--data-folder", folder.Path, file);

        Assert.Equal((0, 0), (backupCode, restoreCode));
        Assert.Matches($"^Backup of workshop: {file}, 1 tables, [0-9]+ bytes\n$", backupSaid);
        Assert.Equal(310L, await ScalarAsync(cluster.Connections.Service, "SELECT sum(micrometres) FROM readings"));
        Assert.Equal(
            EmbeddedPostgres.OwnerRole,
            await ScalarAsync(cluster.Connections.Direct, "SELECT tableowner::text FROM pg_tables WHERE tablename = 'readings'"));
        var before = restoreSaid.Split(' ')[^1].TrimEnd('.', '\n');
        Assert.Equal(0L, await ScalarAsync(cluster.ConnectionsTo(before).Direct, "SELECT count(*) FROM readings"));
    }

    [Fact]
    public async Task A_backup_overwrites_nothing_and_is_for_its_owner_only()
    {
        using var folder = new TemporaryDataFolder();
        await using var cluster = await StartAsync(folder);
        await using var service = NpgsqlDataSource.Create(cluster.Connections.Direct);
        await ExecuteAsync(service, "CREATE TABLE readings (micrometres int)");
        var file = Path.Combine(folder.Path, "backup");

        Assert.Equal(0, (await RunAsync("backup", "--data-folder", folder.Path, file)).ExitCode);
        var first = await File.ReadAllBytesAsync(file, Cancellation);
        var (code, said) = await RunAsync("backup", "--data-folder", folder.Path, file);

        Assert.Equal((1, $"{file} is there already: name a new file.\n"), (code, said));
        Assert.Equal(first, await File.ReadAllBytesAsync(file, Cancellation));
        Assert.Equal("rw-------", FileModes.Of(file));
    }

    [Fact]
    public async Task A_backup_that_is_cut_short_is_refused_and_the_database_goes_on_as_it_was()
    {
        using var folder = new TemporaryDataFolder();
        await using var cluster = await StartAsync(folder);
        await using var service = NpgsqlDataSource.Create(cluster.Connections.Direct);
        await ExecuteAsync(
            service, "CREATE TABLE readings AS SELECT md5(n::text) AS reading FROM generate_series(1, 20000) n");
        var file = Path.Combine(folder.Path, "backup");
        Assert.Equal(0, (await RunAsync("backup", "--data-folder", folder.Path, file)).ExitCode);
        await using (var cut = File.OpenWrite(file))
        {
            cut.SetLength(cut.Length * 3 / 4);
        }

        var (code, _) = await RunAsync("restore", "--data-folder", folder.Path, file);

        Assert.NotEqual(0, code);
        Assert.Equal(20_000L, await ScalarAsync(cluster.Connections.Direct, "SELECT count(*) FROM readings"));
        Assert.Equal(
            1L,
            await ScalarAsync(cluster.Connections.Direct, "SELECT count(*) FROM pg_database WHERE datname LIKE 'workshop%'"));
    }

    [Fact]
    public async Task Without_a_running_service_backup_says_so()
    {
        using var folder = new TemporaryDataFolder();
        await using (await StartAsync(folder))
        {
        }

        var answer = await RunAsync("backup", "--data-folder", folder.Path, Path.Combine(folder.Path, "backup"));

        Assert.Equal((1, $"No service runs on {folder.Path}: start it first.\n"), answer);
    }

    [Fact]
    public async Task The_scripts_and_the_service_agree_where_data_lies_by_default()
    {
        var (_, said) = await BashAsync($". '{Repository}/deploy/common.sh'; data_folder");

        Assert.Equal(DatabaseLocator.DataFolder(new ConfigurationBuilder().Build()), said.TrimEnd('\n'));
    }

    [Fact]
    public async Task The_roles_of_the_composed_database_are_those_of_a_private_cluster()
    {
        const string roles =
            """
            SELECT string_agg(format('%s %s %s %s %s', rolname, rolsuper, rolcreatedb, rolcreaterole, rolcanlogin), ',' ORDER BY 1)
            FROM pg_roles WHERE rolname LIKE 'workshop%'
            """;
        using var folder = new TemporaryDataFolder();
        await using var cluster = await StartAsync(folder);
        var expected = await ScalarAsync(cluster.SuperuserConnection, roles);
        await using (var superuser = NpgsqlDataSource.Create(cluster.SuperuserConnection))
        {
            await ExecuteAsync(superuser, $"DROP DATABASE {EmbeddedPostgres.DatabaseName} WITH (FORCE)");
            await ExecuteAsync(superuser, $"DROP ROLE {EmbeddedPostgres.OwnerRole}, {EmbeddedPostgres.ServiceRole}");
        }

        var password = new NpgsqlConnectionStringBuilder(cluster.SuperuserConnection).Password;
        var (code, said) = await BashAsync(
            $". '{Repository}/deploy/common.sh'; use_private_cluster '{folder.Path}'; " +
            $"POSTGRES_USER=postgres POSTGRES_PASSWORD={password} '{Repository}/deploy/create-roles.sh'");

        Assert.True(code == 0, said);
        Assert.Equal(expected, await ScalarAsync(cluster.SuperuserConnection, roles));
        Assert.Equal(
            EmbeddedPostgres.OwnerRole,
            await ScalarAsync(
                cluster.Connections.Service,
                "SELECT pg_get_userbyid(datdba)::text FROM pg_database WHERE datname = current_database()"));
    }

    private static Task<EmbeddedPostgres> StartAsync(TemporaryDataFolder folder) =>
        EmbeddedPostgres.StartAsync(EmbeddedPostgresOptions.Lasting(folder.Path), null, Cancellation);

    private static async Task ExecuteAsync(NpgsqlDataSource source, string sql)
    {
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(Cancellation);
    }

    private static Task<object?> ScalarAsync(string connection, string sql) =>
        Sql.ScalarAsync(connection, sql, Cancellation);

    private static Task<(int ExitCode, string Said)> RunAsync(string script, params string[] arguments) =>
        StartAsync(Path.Combine(Repository, "deploy", script), arguments);

    private static Task<(int ExitCode, string Said)> BashAsync(string commands) => StartAsync("bash", "-c", commands);

    private static async Task<(int ExitCode, string Said)> StartAsync(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync(Cancellation);
        var output = await process.StandardOutput.ReadToEndAsync(Cancellation);
        await process.WaitForExitAsync(Cancellation);
        return (process.ExitCode, output + await error);
    }

    private static string FindRepository()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Workshop.sln")))
        {
            folder = folder.Parent
                ?? throw new InvalidOperationException($"No folder above {AppContext.BaseDirectory} holds Workshop.sln.");
        }

        return folder.FullName;
    }
}
