using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;
using Workshop.Web.Hosting;

namespace Workshop.Web.Data;

internal static class DatabaseRegistration
{
    public static void AddWorkshopData(this IServiceCollection services, DatabaseConnections connections)
    {
        services.AddSingleton(connections);
        services.AddSingleton(_ => Source(ServiceConnection(connections)));
        services.AddDbContext<WorkshopDbContext>((provider, options) =>
            Configure(options, provider.GetRequiredService<NpgsqlDataSource>()));
        services.AddDataProtection().SetApplicationName("Workshop").PersistKeysToDbContext<WorkshopDbContext>();
    }

    public static DbContextOptionsBuilder Configure(DbContextOptionsBuilder options, NpgsqlDataSource source) =>
        options.UseNpgsql(source, Mapped).UseSnakeCaseNamingConvention().ConfigureWarnings(LeaveFaultsToTheirCatcher);

    public static DbContextOptionsBuilder Configure(DbContextOptionsBuilder options, string connection) =>
        options.UseNpgsql(connection, Mapped).UseSnakeCaseNamingConvention();

    /// <summary>Brings the database to this version of the service, as the owner of its tables.</summary>
    public static async Task Migrate(string directConnection, CancellationToken ct)
    {
        var options = new DbContextOptionsBuilder<WorkshopDbContext>();
        Configure(options, directConnection);
        await using var db = new WorkshopDbContext(options.Options);
        await db.Database.MigrateAsync(ct);
    }

    /// <summary>
    /// With one login for both, the service still works as the role that may not change what is only ever added: it takes
    /// the role when it connects. With two, the login of the service is that role, or a member that holds no more.
    /// </summary>
    private static string ServiceConnection(DatabaseConnections connections)
    {
        if (connections.Service != connections.Direct)
        {
            return connections.Service;
        }

        var service = new NpgsqlConnectionStringBuilder(connections.Service);
        service.Options = $"{service.Options} -c role={EmbeddedPostgres.ServiceRole}".Trim();
        return service.ConnectionString;
    }

    private static NpgsqlDataSource Source(string connection)
    {
        var builder = new NpgsqlDataSourceBuilder(connection);
        builder.UseNodaTime();
        return builder.Build();
    }

    // A refusal by the database is an answer like any other; what nobody catches is logged where it ends.
    private static void LeaveFaultsToTheirCatcher(WarningsConfigurationBuilder events) => events.Log(
        (CoreEventId.SaveChangesFailed, LogLevel.Debug), (RelationalEventId.CommandError, LogLevel.Debug));

    private static void Mapped(Npgsql.EntityFrameworkCore.PostgreSQL.Infrastructure.NpgsqlDbContextOptionsBuilder npgsql) =>
        npgsql.UseNodaTime().SetPostgresVersion(15, 0);
}

/// <summary>What the migrations tool builds the model with; it never connects.</summary>
internal sealed class DesignTimeDbContextFactory : IDesignTimeDbContextFactory<WorkshopDbContext>
{
    public WorkshopDbContext CreateDbContext(string[] args)
    {
        var options = new DbContextOptionsBuilder<WorkshopDbContext>();
        DatabaseRegistration.Configure(options, "Host=design-time");
        return new WorkshopDbContext(options.Options);
    }
}
