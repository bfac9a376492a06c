using Testcontainers.PostgreSql;

namespace Workshop.Tests.Hosting;

/// <summary>The test server in a container, for machines that have a container engine but no PostgreSQL.</summary>
internal static class ContainerPostgres
{
    public static async Task<RunningServer> StartAsync()
    {
        var container = new PostgreSqlBuilder("postgres:15")
            .WithCommand("-c", "fsync=off", "-c", "synchronous_commit=off", "-c", "full_page_writes=off")
            .Build();
        await container.StartAsync();
        return await RunningServer.OfOneLoginAsync(container.GetConnectionString(), container);
    }
}
