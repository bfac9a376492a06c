using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Workshop.Tests.Hosting;
using Workshop.Web.Data.Seeding;
using Workshop.Web.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Seeding;

/// <summary>Who gets into an empty database when the service first starts on it.</summary>
public sealed partial class FirstStartTests(PostgresServer server)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Without_the_demo_an_empty_database_stays_empty()
    {
        await using var seeded = new SeededService(await server.CreateDatabaseAsync(Ct));
        await using var service = await seeded.Start(demo: false);

        Assert.Equal(0, await service.Look(db => db.Users.CountAsync(Ct)));
        Assert.False(File.Exists(seeded.PasswordFile));
    }

    [Fact]
    public async Task A_first_manager_is_made_once_and_signs_in_with_the_printed_password()
    {
        await using var seeded = new SeededService(await server.CreateDatabaseAsync(Ct));
        var said = await SaidAtStart(
            seeded, "--Workshop:FirstManager=Ada Höllerer", "--Workshop:TimeZone=Europe/Vienna", "--Workshop:Name=Our workshop");
        var password = Printed().Match(said).Groups["password"].Value;

        Assert.DoesNotContain(
            "Generated passwords", await SaidAtStart(seeded, "--Workshop:FirstManager=Ada Höllerer"), StringComparison.Ordinal);
        await using var service = await seeded.Start(demo: false);
        using var answer = await service.CreateClient().PostAsJsonAsync(
            "/api/v1/session", new { userName = "Ada Höllerer", password }, Ct);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("Europe/Vienna", await service.Look(db => db.WorkshopProfiles.Select(p => p.TimeZone).SingleAsync(Ct)));
        Assert.False(await service.Look(db => db.WorkshopProfiles.Select(p => p.Invented).SingleAsync(Ct)));
        Assert.Equal(0, await service.Look(db => db.EngineModels.CountAsync(Ct)));
    }

    [Fact]
    public void Passwords_are_kept_where_only_their_owner_reads_them()
    {
        using var folder = new TemporaryDataFolder();
        var file = Path.Combine(folder.Path, "demo-passwords.txt");

        Assert.True(PasswordFile.Keep(file, [("greta", "old")]));
        Assert.True(PasswordFile.Keep(file, [("greta", "new")]));

        Assert.Equal("rw-------", FileModes.Of(file));
        Assert.Equal(["greta new"], File.ReadLines(file).Where(line => !line.StartsWith('#')));
        Assert.Equal([file], Directory.GetFiles(folder.Path));
    }

    [Fact]
    public async Task Where_the_file_cannot_be_written_what_is_printed_says_so()
    {
        using var folder = new TemporaryDataFolder();
        var file = Path.Combine(folder.Path, "demo-passwords.txt");
        Directory.CreateDirectory($"{file}.new");
        await using var printed = new StringWriter();

        var kept = PasswordFile.Keep(file, [("greta", "secret")]);
        await PasswordFile.Print(printed, [("greta", "secret")], kept ? file : null);

        Assert.False(kept);
        Assert.Contains("kept nowhere", printed.ToString(), StringComparison.Ordinal);
        Assert.Contains("greta      secret", printed.ToString(), StringComparison.Ordinal);
    }

    /// <summary>What the service prints, as a process of its own, until it listens.</summary>
    private static async Task<string> SaidAtStart(SeededService seeded, params string[] settings)
    {
        var start = new ProcessStartInfo(
            "dotnet",
            [
                Path.Combine(AppContext.BaseDirectory, "Workshop.Web.dll"), "--urls", "http://127.0.0.1:0",
                .. seeded.Settings.Where(s => s.Setting != "Workshop:LogLevel").Select(s => $"--{s.Setting}={s.Value}"), .. settings,
            ])
        {
            RedirectStandardOutput = true,
        };
        using var service = Process.Start(start)!;
        var said = new List<string>();
        while (await service.StandardOutput.ReadLineAsync(Ct) is { } line && !line.Contains("127.0.0.1", StringComparison.Ordinal))
        {
            said.Add(line);
        }

        service.Kill();
        await service.WaitForExitAsync(Ct);
        return string.Join('\n', said);
    }

    [GeneratedRegex(@"Ada Höllerer +(?<password>[a-z0-9]{20})")]
    private static partial Regex Printed();
}
