using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Workshop.Domain.Bookings;
using Workshop.Domain.Tooling;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Workshop.Web.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Seeding;

/// <summary>What an empty database is filled with when the service first starts on it.</summary>
public sealed partial class FirstStartTests(PostgresServer server) : IAsyncDisposable
{
    private readonly TemporaryDataFolder folder = new();
    private TestDatabase? database;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    private string PasswordFile => Path.Combine(folder.Path, "demo-passwords.txt");

    public async ValueTask DisposeAsync()
    {
        if (database is not null)
        {
            await database.DisposeAsync();
        }

        folder.Dispose();
    }

    [Fact]
    public async Task The_demo_has_people_places_instruments_and_stock_and_its_passwords_let_people_in()
    {
        await using var service = await Start(demo: true);
        var profile = await Look(service, db => db.WorkshopProfiles.SingleAsync(Ct));
        Assert.True(profile.Invented);
        Assert.Equal(3, await Look(service, db => db.Resources.CountAsync(r => r.Kind == ResourceKind.Bay, Ct)));
        Assert.Equal(5, await Look(service, db => db.Resources.CountAsync(r => r.Kind == ResourceKind.Technician, Ct)));
        Assert.Equal(3, await Look(service, db => db.EngineModels.CountAsync(m => m.Invented, Ct)));
        Assert.True(await Look(service, db => db.FeelerBlades.CountAsync(Ct)) > 60);
        Assert.True(await Look(service, db => db.StockBalances.CountAsync(b => b.Thickness != null && b.OnHand > 0, Ct)) > 50);

        // One instrument is overdue, so that the demo shows what then happens.
        var today = await Look(service, db => Task.FromResult(WorkshopTime.Of(profile).DayOf(NodaTime.SystemClock.Instance.GetCurrentInstant())));
        Assert.Equal(1, await Look(service, db => db.Instruments.CountAsync(i => i.CalibrationDueOn < today, Ct)));
        Assert.Equal(
            today.PlusDays(-30),
            await Look(service, db => db.Instruments.Where(i => i.CalibrationDueOn < today).Select(i => i.CalibrationDueOn).SingleAsync(Ct)));

        Assert.Equal("rw-------", FileModes.Of(PasswordFile));
        var passwords = Passwords();
        Assert.Equal(7, passwords.Count);
        Assert.All(passwords.Values, p => Assert.InRange(p.Length, 20, 40));
        Assert.Equal(HttpStatusCode.OK, await SignIn(service.CreateClient(), "otto", passwords["otto"]));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await SignIn(service.CreateClient(), "otto", passwords["greta"]));
    }

    [Fact]
    public async Task A_second_start_adds_nothing_and_keeps_the_passwords()
    {
        await using (var first = await Start(demo: true))
        {
            Assert.Equal(7, await Look(first, db => db.Users.CountAsync(Ct)));
        }

        var passwords = Passwords();
        await using var second = await Start(demo: true);

        Assert.Equal(7, await Look(second, db => db.Users.CountAsync(Ct)));
        Assert.Equal(3, await Look(second, db => db.EngineModels.CountAsync(Ct)));
        Assert.Equal(passwords, Passwords());
        Assert.Equal(HttpStatusCode.OK, await SignIn(second.CreateClient(), "tilda", passwords["tilda"]));
    }

    [Fact]
    public async Task A_filling_that_is_broken_off_leaves_nothing_and_the_next_start_fills_it_whole()
    {
        await using (var empty = await Start(demo: false))
        {
            // Late in the filling this row stands in the way.
            await Look(empty, db => db.Database.ExecuteSqlAsync(
                $"insert into storage_places (id, name) values (gen_random_uuid(), 'Oil store')", Ct));
        }

        await Assert.ThrowsAsync<DbUpdateException>(() => Start(demo: true));

        await using (var afterwards = await Start(demo: false))
        {
            Assert.Equal(0, await Look(afterwards, db => db.Users.CountAsync(Ct)));
            Assert.Equal(0, await Look(afterwards, db => db.WorkshopProfiles.CountAsync(Ct)));
            Assert.Equal(0, await Look(afterwards, db => db.EngineModels.CountAsync(Ct)));
            await Look(afterwards, db => db.StoragePlaces.ExecuteDeleteAsync(Ct));
        }

        await using var whole = await Start(demo: true);
        Assert.Equal(HttpStatusCode.OK, await SignIn(whole.CreateClient(), "greta", Passwords()["greta"]));
        Assert.Equal(7, await Look(whole, db => db.Users.CountAsync(Ct)));
    }

    [Fact]
    public async Task Without_the_demo_an_empty_database_stays_empty()
    {
        await using var service = await Start(demo: false);

        Assert.Equal(0, await Look(service, db => db.Users.CountAsync(Ct)));
        Assert.False(File.Exists(PasswordFile));
    }

    [Fact]
    public async Task Where_the_folder_cannot_be_written_the_demo_starts_all_the_same()
    {
        Directory.CreateDirectory(folder.Path);
        Directory.CreateDirectory(PasswordFile + ".new");

        await using var service = await Start(demo: true);

        Assert.Equal(7, await Look(service, db => db.Users.CountAsync(Ct)));
        Assert.False(File.Exists(PasswordFile));
    }

    [Fact]
    public async Task A_first_manager_is_made_once_and_signs_in_with_the_printed_password()
    {
        database = await server.CreateDatabaseAsync(Ct);
        var said = await SaidAtStart("--Workshop:FirstManager=Ada Höllerer", "--Workshop:TimeZone=Europe/Vienna", "--Workshop:Name=Our workshop");
        var password = Printed().Match(said).Groups["password"].Value;

        Assert.DoesNotContain(password, await SaidAtStart("--Workshop:FirstManager=Ada Höllerer"), StringComparison.Ordinal);
        await using var service = await Start(demo: false);
        Assert.Equal(HttpStatusCode.OK, await SignIn(service.CreateClient(), "Ada Höllerer", password));
        Assert.Equal("Europe/Vienna", await Look(service, db => db.WorkshopProfiles.Select(p => p.TimeZone).SingleAsync(Ct)));
        Assert.False(await Look(service, db => db.WorkshopProfiles.Select(p => p.Invented).SingleAsync(Ct)));
        Assert.Equal(0, await Look(service, db => db.EngineModels.CountAsync(Ct)));
    }

    private async Task<WebApplicationFactory<WorkshopDbContext>> Start(bool demo)
    {
        database ??= await server.CreateDatabaseAsync(Ct);
        var factory = new WebApplicationFactory<WorkshopDbContext>().WithWebHostBuilder(host =>
        {
            host.UseEnvironment("Testing");
            foreach (var (setting, value) in Settings())
            {
                host.UseSetting(setting, value);
            }

            host.UseSetting("Workshop:Demo", demo ? "true" : "false");
        });
        try
        {
            factory.StartServer();
            return factory;
        }
        catch
        {
            await factory.DisposeAsync();
            throw;
        }
    }

    /// <summary>What the service prints, as a process of its own, until it listens.</summary>
    private async Task<string> SaidAtStart(params string[] settings)
    {
        var start = new ProcessStartInfo(
            "dotnet",
            [
                Path.Combine(AppContext.BaseDirectory, "Workshop.Web.dll"), "--urls", "http://127.0.0.1:0",
                .. Settings().Select(s => $"--{s.Setting}={s.Value}"), .. settings,
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

    private (string Setting, string Value)[] Settings() =>
    [
        ("ConnectionStrings:Workshop", database!.Connections.Service),
        ("ConnectionStrings:WorkshopDirect", database.Connections.Direct),
        ("Workshop:DataFolder", folder.Path),
        ("Workshop:SignInsPerMinute", "100000"),
    ];

    private static async Task<T> Look<T>(WebApplicationFactory<WorkshopDbContext> service, Func<WorkshopDbContext, Task<T>> look)
    {
        await using var scope = service.Services.CreateAsyncScope();
        return await look(scope.ServiceProvider.GetRequiredService<WorkshopDbContext>());
    }

    private Dictionary<string, string> Passwords() => File.ReadLines(PasswordFile)
        .Where(line => !line.StartsWith('#'))
        .Select(line => line.Split(' '))
        .ToDictionary(words => words[0], words => words[1]);

    private static async Task<HttpStatusCode> SignIn(HttpClient client, string userName, string password)
    {
        using var answer = await client.PostAsJsonAsync("/api/v1/session", new { userName, password }, Ct);
        return answer.StatusCode;
    }

    [GeneratedRegex(@"Ada Höllerer +(?<password>[a-z0-9]{20})")]
    private static partial Regex Printed();
}
