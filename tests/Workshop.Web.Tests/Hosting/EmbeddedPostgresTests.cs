using System.Diagnostics;
using Npgsql;
using Workshop.Web.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Hosting;

public sealed class EmbeddedPostgresTests
{
    private static readonly TimeSpan Seconds = TimeSpan.FromSeconds(10);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Data_lasts_from_one_start_to_the_next()
    {
        using var folder = new TemporaryDataFolder();
        int server;
        await using (var first = await StartAsync(folder))
        {
            await RememberAsync(first.Connections.Direct);
            server = first.ServerProcessId;
            Assert.True(Processes.Runs(server));
        }

        Assert.False(Processes.Runs(server));
        await using var second = await StartAsync(folder);
        await AssertRememberedAsync(second.Connections.Direct);
    }

    [Fact]
    public async Task The_server_never_runs_as_root_and_its_settings_are_durable()
    {
        using var folder = new TemporaryDataFolder();
        await using var cluster = await StartAsync(folder);

        Assert.NotEqual(0, Processes.UserOf(cluster.ServerProcessId));
        foreach (var (setting, value) in new[]
        {
            ("fsync", "on"), ("synchronous_commit", "on"), ("full_page_writes", "on"), ("data_checksums", "on"),
            ("server_encoding", "UTF8"), ("lc_collate", "C.UTF-8"), ("listen_addresses", ""),
        })
        {
            Assert.Equal(value, await Sql.ScalarAsync(cluster.Connections.Direct, $"SHOW {setting}", Cancellation));
        }
    }

    [Fact]
    public async Task Nobody_else_on_the_machine_gets_in()
    {
        using var folder = new TemporaryDataFolder();
        await using var cluster = await StartAsync(folder);

        Assert.Equal("rwx------", FileModes.Of(folder.Home));
        Assert.Equal("rw-------", FileModes.Of(Path.Combine(folder.Path, "pgpass")));
        foreach (var guess in new[] { null, "postgres" })
        {
            var connection = new NpgsqlConnectionStringBuilder(cluster.SuperuserConnection) { Password = guess };
            await Assert.ThrowsAnyAsync<NpgsqlException>(
                () => Sql.ScalarAsync(connection.ConnectionString, "SELECT 1", Cancellation));
        }
    }

    [Fact]
    public async Task The_server_stops_when_the_service_is_killed()
    {
        using var folder = new TemporaryDataFolder();
        using var service = await HeldDatabase.StartAsync(folder.Setting, null, Cancellation);
        var server = folder.ServerProcessId();
        Assert.True(Processes.Runs(server));

        await service.KillAsync(Cancellation);
        await Processes.GoneAsync(server, Seconds, Cancellation);

        Assert.False(File.Exists(folder.PidFile));
    }

    [Fact]
    public async Task A_start_right_after_a_kill_waits_and_finds_every_acknowledged_write()
    {
        using var folder = new TemporaryDataFolder();
        using var service = await HeldDatabase.StartAsync(folder.Setting, null, Cancellation);
        await RememberAsync(service.Connection);

        await service.KillAsync(Cancellation);
        await using var cluster = await StartAsync(folder);

        await AssertRememberedAsync(cluster.Connections.Direct);
    }

    [Fact]
    public async Task A_second_service_on_the_same_folder_is_refused_in_one_line()
    {
        using var folder = new TemporaryDataFolder();
        using var service = await HeldDatabase.StartAsync(folder.Setting, null, Cancellation);

        var (exitCode, said) = await HeldDatabase.FailAsync(folder.Setting, Cancellation);

        Assert.Equal(1, exitCode);
        Assert.Equal(
            $"The data folder {folder.Path} is in use by process {service.ProcessId}: stop it, or name another " +
            "folder with Workshop:DataFolder.\n",
            said);
        await RememberAsync(service.Connection);
    }

    [Fact]
    public async Task A_server_of_an_earlier_run_that_does_not_stop_is_named()
    {
        using var folder = new TemporaryDataFolder();
        await using var cluster = await StartAsync(folder);

        // As after a kill of the service whose server hangs: the lock is free, the server runs.
        File.Delete(Path.Combine(folder.Path, "in-use"));
        var options = EmbeddedPostgresOptions.Lasting(folder.Path) with { WaitForStopping = TimeSpan.FromSeconds(0.3) };
        var refused = await Assert.ThrowsAsync<DatabaseUnavailableException>(
            () => EmbeddedPostgres.StartAsync(options, null, Cancellation));

        Assert.Contains($"is in use by process {cluster.ServerProcessId}, a PostgreSQL server", refused.Message);
        await RememberAsync(cluster.Connections.Direct);
    }

    [Fact]
    public async Task A_crash_of_service_and_server_loses_nothing_and_its_pid_file_does_not_block()
    {
        using var folder = new TemporaryDataFolder();
        using var service = await HeldDatabase.StartAsync(folder.Setting, null, Cancellation);
        await RememberAsync(service.Connection);
        var server = folder.ServerProcessId();

        // The server first, while its service still lives, so that no orderly stop can come between.
        using var crash = Process.GetProcessById(server);
        crash.Kill();
        await service.KillAsync(Cancellation);
        await Processes.GoneAsync(server, Seconds, Cancellation);

        await using var cluster = await StartAsync(folder);
        await AssertRememberedAsync(cluster.Connections.Direct);
    }

    [Fact]
    public async Task A_process_that_was_given_the_number_of_a_crashed_server_is_not_taken_for_it()
    {
        using var folder = new TemporaryDataFolder();
        await using (var first = await StartAsync(folder))
        {
            await RememberAsync(first.Connections.Direct);
        }

        // PostgreSQL alone would refuse to start while any process of its user has this number.
        var user = await ServerUser.FindAsync(Cancellation);
        using var stranger = Process.Start(user.Command("sleep", ["60"]))!;
        await user.RunAsync("tee", [folder.PidFile], $"{stranger.Id}\n{folder.Home}/data\n0\n5432\n\n\n", Cancellation);
        try
        {
            await using var second = await StartAsync(folder);
            await AssertRememberedAsync(second.Connections.Direct);
        }
        finally
        {
            stranger.Kill();
        }
    }

    [Fact]
    public async Task A_server_that_is_killed_under_a_living_service_is_started_again()
    {
        using var folder = new TemporaryDataFolder();
        await using var cluster = await StartAsync(folder);
        await RememberAsync(cluster.Connections.Direct);
        using var server = Process.GetProcessById(cluster.ServerProcessId);

        server.Kill();

        var waited = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                await AssertRememberedAsync(cluster.Connections.Direct);
                break;
            }
            catch (NpgsqlException) when (waited.Elapsed < Seconds)
            {
                await Task.Delay(50, Cancellation);
            }
        }

        Assert.NotEqual(server.Id, folder.ServerProcessId());
    }

    [Fact]
    public async Task What_an_interrupted_first_start_left_is_cleared_away()
    {
        using var folder = new TemporaryDataFolder();
        await using (await StartAsync(folder))
        {
        }

        Directory.Move(Path.Combine(folder.Home, "data"), Path.Combine(folder.Home, "new.halfway"));
        await using var cluster = await StartAsync(folder);

        Assert.False(Directory.Exists(Path.Combine(folder.Home, "new.halfway")));
        Assert.Equal(1, await Sql.ScalarAsync(cluster.Connections.Service, "SELECT 1", Cancellation));
    }

    [Theory]
    [InlineData("a/folder/whose/path/is/longer/than/the/hundred/and/seven/bytes/that/a/unix/socket/address/can/hold/at/most")]
    [InlineData("Smith, Sons; and \"Daughters\" = 1")]
    public async Task A_folder_whose_path_suits_no_socket_gets_one_elsewhere_that_goes_with_the_server(string name)
    {
        using var folder = new TemporaryDataFolder(name);
        string socket;
        await using (var cluster = await StartAsync(folder))
        {
            await RememberAsync(cluster.Connections.Direct);
            socket = new NpgsqlConnectionStringBuilder(cluster.Connections.Direct).Host!;
            Assert.StartsWith("/tmp/workshop.", socket);
            Assert.Equal("rwx------", FileModes.Of(socket));
        }

        Assert.False(Directory.Exists(socket));
    }

    [Fact]
    public async Task A_cluster_for_tests_leaves_nothing_behind()
    {
        string home;
        await using (var cluster = await EmbeddedPostgres.StartAsync(
            EmbeddedPostgresOptions.Ephemeral(), null, Cancellation))
        {
            home = new NpgsqlConnectionStringBuilder(cluster.Connections.Direct).Host!;
            Assert.Equal("off", await Sql.ScalarAsync(cluster.Connections.Direct, "SHOW fsync", Cancellation));
            Assert.True(Directory.Exists(home));
        }

        Assert.False(Directory.Exists(home));
    }

    [Fact]
    public async Task Without_server_programs_one_line_says_what_to_install()
    {
        using var folder = new TemporaryDataFolder();
        var options = EmbeddedPostgresOptions.Lasting(folder.Path) with
        {
            Binaries = new PostgresBinaries(null, "/nowhere/bin", "/nowhere/versions"),
        };

        var refused = await Assert.ThrowsAsync<DatabaseUnavailableException>(
            () => EmbeddedPostgres.StartAsync(options, null, Cancellation));

        Assert.Equal(
            "No PostgreSQL server programs were found: install it (apt-get install postgresql), name its folder in " +
            "PG_BIN, or give ConnectionStrings:Workshop.",
            refused.Message);
        Assert.False(Directory.Exists(folder.Path));
    }

    [Fact]
    public async Task A_folder_that_cannot_be_used_is_named_with_the_user_and_the_setting()
    {
        using var folder = new TemporaryDataFolder();
        FileModes.Set(folder.Parent, Environment.IsPrivilegedProcess ? "rwx------" : "r-x------");

        var refused = await Assert.ThrowsAsync<DatabaseUnavailableException>(() => StartAsync(folder));
        FileModes.Set(folder.Parent, "rwx------");

        Assert.Matches($"^The user .* cannot (enter|write to) .*{folder.Path}.*Workshop:DataFolder", refused.Message);
        Assert.DoesNotContain('\n', refused.Message);
    }

    private static Task<EmbeddedPostgres> StartAsync(TemporaryDataFolder folder) =>
        EmbeddedPostgres.StartAsync(EmbeddedPostgresOptions.Lasting(folder.Path), null, Cancellation);

    private static Task RememberAsync(string connection) =>
        Sql.ExecuteAsync(connection, "CREATE TABLE remembered AS SELECT 2500 AS micrometres", Cancellation);

    private static async Task AssertRememberedAsync(string connection) =>
        Assert.Equal(2500, await Sql.ScalarAsync(connection, "SELECT micrometres FROM remembered", Cancellation));
}
