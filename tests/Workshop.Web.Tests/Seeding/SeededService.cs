using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Workshop.Web.Tests.Hosting;

namespace Workshop.Web.Tests.Seeding;

/// <summary>The service on a database and a data folder of its own, started as often as a test wants.</summary>
internal sealed class SeededService(TestDatabase database) : IAsyncDisposable
{
    private readonly TemporaryDataFolder folder = new();

    public string PasswordFile => Path.Combine(folder.Path, "demo-passwords.txt");

    public IReadOnlyList<(string Setting, string Value)> Settings =>
    [
        ("ConnectionStrings:Workshop", database.Connections.Service),
        ("ConnectionStrings:WorkshopDirect", database.Connections.Direct),
        ("Workshop:DataFolder", folder.Path),
        ("Workshop:SignInsPerMinute", "100000"),
        ("Workshop:LogLevel", "Fatal"),

        // The seeder fits every model itself; one that is fitted again between two questions of a test answers them differently.
        ("Drift:Refits", "false"),
    ];

    /// <exception cref="Exception">What the start itself fails of.</exception>
    public async Task<WebApplicationFactory<WorkshopDbContext>> Start(bool demo)
    {
        var factory = new WebApplicationFactory<WorkshopDbContext>().WithWebHostBuilder(host =>
        {
            host.UseEnvironment("Testing");
            foreach (var (setting, value) in Settings)
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

    public Dictionary<string, string> Passwords() => File.ReadLines(PasswordFile)
        .Where(line => !line.StartsWith('#'))
        .Select(line => line.Split(' '))
        .ToDictionary(words => words[0], words => words[1]);

    public async ValueTask DisposeAsync()
    {
        await database.DisposeAsync();
        folder.Dispose();
    }
}

internal static class SeededServiceExtensions
{
    public static async Task<T> Look<T>(
        this WebApplicationFactory<WorkshopDbContext> service, Func<WorkshopDbContext, Task<T>> look)
    {
        await using var scope = service.Services.CreateAsyncScope();
        return await look(scope.ServiceProvider.GetRequiredService<WorkshopDbContext>());
    }
}
