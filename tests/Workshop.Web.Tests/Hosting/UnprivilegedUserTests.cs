using System.Diagnostics;
using System.Globalization;
using Npgsql;
using Workshop.Web.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Hosting;

public sealed class UnprivilegedUserTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_service_of_an_ordinary_user_runs_its_cluster_itself_in_its_own_state_folder()
    {
        using var state = new TemporaryDataFolder("state");
        using var programs = new TemporaryDataFolder("programs");
        var user = Environment.IsPrivilegedProcess ? new ServerUser("nobody") : ServerUser.Self;
        await user.OwnFolderAsync(state.Path, Cancellation);
        var program = await CopyOfThisProgramAsync(programs.Path);

        using var service = await HeldDatabase.StartAsync([], Change, Cancellation);
        await Sql.ExecuteAsync(service.Connection, "CREATE TABLE remembered AS SELECT 1", Cancellation);

        var home = Path.Combine(state.Path, "workshop", "postgres");
        Assert.Equal(home, new NpgsqlConnectionStringBuilder(service.Connection).Host);
        var server = int.Parse(
            File.ReadLines(Path.Combine(home, "data", "postmaster.pid")).First(), CultureInfo.InvariantCulture);
        Assert.Equal(Processes.UserOf(service.ProcessId), Processes.UserOf(server));
        Assert.NotEqual(0, Processes.UserOf(server));

        await service.KillAsync(Cancellation);
        await Processes.GoneAsync(server, TimeSpan.FromSeconds(10), Cancellation);

        void Change(ProcessStartInfo start)
        {
            start.FileName = program;
            start.WorkingDirectory = "/";
            start.Environment["XDG_STATE_HOME"] = state.Path;
            if (user.Name is not null)
            {
                start.UserName = user.Name;
            }
        }
    }

    // The user may be unable to enter the folder that these tests were built in.
    private static async Task<string> CopyOfThisProgramAsync(string folder)
    {
        var copied = await ServerUser.Self.RunAsync(
            "cp", ["-r", AppContext.BaseDirectory, folder], null, Cancellation);
        copied.MustSucceed("The test program cannot be copied");
        var allowed = await ServerUser.Self.RunAsync("chmod", ["-R", "a+rX", folder], null, Cancellation);
        allowed.MustSucceed($"{folder} cannot be opened to others");
        return Path.Combine(folder, Path.GetFileName(Environment.ProcessPath!));
    }
}
