using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Workshop.Web.Data;
using Workshop.Web.Http;
using Xunit;

namespace Workshop.Tests.Hosting;

/// <summary>
/// The whole service over a database of the test class's own, filled with <see cref="TestWorkshop"/>, at a clock that the
/// test sets. Requests go through the real pipeline: sign-in, policies, filters.
/// </summary>
public sealed class WorkshopApp(PostgresServer server) : IAsyncLifetime
{
    private TestDatabase? database;
    private WebApplicationFactory<WorkshopDbContext>? factory;

    public SettableClock Clock { get; } = new(TestWorkshop.Start);

    public IServiceProvider Services => factory!.Services;

    public TestDatabase Database => database!;

    public async ValueTask InitializeAsync()
    {
        database = await server.CreateFromTemplateAsync("workshop", async connection =>
        {
            await using var preparing = Factory(connection, connection, new SettableClock(TestWorkshop.Start));
            await using var scope = preparing.Services.CreateAsyncScope();
            await TestWorkshop.Fill(scope.ServiceProvider);
        });
        factory = Factory(database.Connections.Service, database.Connections.Direct, Clock);
    }

    public async ValueTask DisposeAsync()
    {
        if (factory is not null)
        {
            await factory.DisposeAsync();
        }

        if (database is not null)
        {
            await database.DisposeAsync();
        }
    }

    /// <summary>A client that nobody has signed in.</summary>
    public HttpClient Anonymous() => factory!.CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false });

    /// <summary>A client of the API, signed in by bearer token; each POST gets a fresh idempotency key unless it has one.</summary>
    public async Task<HttpClient> As(string role)
    {
        var client = factory!.CreateDefaultClient(new FreshKey());
        await SignIn(client, role);
        return client;
    }

    /// <summary>
    /// One more copy of the service on the same database and clock, listening on a port of its own; whoever asks for it ends it.
    /// </summary>
    public WebApplicationFactory<WorkshopDbContext> Copy()
    {
        var copy = Factory(database!.Connections.Service, database.Connections.Direct, Clock);
        copy.UseKestrel();
        copy.StartServer();
        return copy;
    }

    /// <summary>A client of a copy of the service, signed in as <see cref="As"/> does.</summary>
    public static async Task<HttpClient> Of(WebApplicationFactory<WorkshopDbContext> copy, string role)
    {
        ArgumentNullException.ThrowIfNull(copy);
        var client = copy.CreateDefaultClient(copy.ClientOptions.BaseAddress, new FreshKey());
        await SignIn(client, role);
        return client;
    }

    /// <summary>A look at the rows themselves.</summary>
    public async Task<T> Look<T>(Func<WorkshopDbContext, Task<T>> look)
    {
        await using var scope = Services.CreateAsyncScope();
        return await look(scope.ServiceProvider.GetRequiredService<WorkshopDbContext>());
    }

    private static async Task SignIn(HttpClient client, string role)
    {
        var answer = await client.PostAsJsonAsync("/api/v1/session", new { userName = role, password = TestWorkshop.Password });
        answer.EnsureSuccessStatusCode();
        var token = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("token").GetString();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
    }

    private static WebApplicationFactory<WorkshopDbContext> Factory(string service, string direct, IClock clock) =>
        new WebApplicationFactory<WorkshopDbContext>().WithWebHostBuilder(host =>
        {
            host.UseEnvironment("Testing");
            host.UseUrls("http://127.0.0.1:0");
            host.UseSetting("ConnectionStrings:Workshop", service);
            host.UseSetting("ConnectionStrings:WorkshopDirect", direct);
            host.UseSetting("Workshop:LogLevel", "Error");
            host.UseSetting("Drift:Refits", "false");
            host.UseSetting("Due:Recomputes", "false");
            host.UseSetting("Waits:Keep", "false");
            host.UseSetting("Stores:WatchLedger", "false");
            host.UseSetting("Smtp:Sends", "false");
            host.UseSetting("Workshop:SignInsPerMinute", "100000");
            host.UseSetting("Workshop:RequestsPerSecond", "100000");
            host.UseSetting("Workshop:RecordsPerMinute", "100000");
            host.ConfigureTestServices(services => services.AddSingleton(clock));
        });

    private sealed class FreshKey : DelegatingHandler
    {
        private int sent;

        protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            if (request.Method == HttpMethod.Post && !request.Headers.Contains(Caller.KeyHeader))
            {
                request.Headers.Add(Caller.KeyHeader, $"test-{GetHashCode()}-{Interlocked.Increment(ref sent)}");
            }

            return base.SendAsync(request, cancellationToken);
        }
    }
}

/// <summary>The time is what the test says.</summary>
public sealed class SettableClock(Instant start) : IClock
{
    public Instant Now { get; set; } = start;

    public Instant GetCurrentInstant() => Now;
}
