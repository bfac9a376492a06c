using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Workshop.Web.Data;

namespace Workshop.Web.Hosting;

/// <summary>Live: the process answers. Ready: the database answers, too, and has this version's tables.</summary>
internal static class Health
{
    private const string Ready = "ready";

    public static void AddDbContextCheck(this IHealthChecksBuilder checks) =>
        checks.AddCheck<DatabaseCheck>("database", tags: [Ready]).AddCheck<LedgerWatch>("ledger", tags: [Ready]);

    public static void AddLedgerWatch(this IServiceCollection services)
    {
        services.AddSingleton<LedgerWatch>();
        services.AddHostedService(provider => provider.GetRequiredService<LedgerWatch>());
    }

    public static void MapHealth(this IEndpointRouteBuilder app)
    {
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false }).AllowAnonymous();
        app.MapHealthChecks("/health/ready", new HealthCheckOptions { Predicate = c => c.Tags.Contains(Ready) }).AllowAnonymous();
    }

    private sealed class DatabaseCheck(WorkshopDbContext db) : IHealthCheck
    {
        public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
        {
            try
            {
                await db.WorkshopProfiles.AsNoTracking().AnyAsync(cancellationToken);
                return HealthCheckResult.Healthy();
            }
            catch (Npgsql.NpgsqlException fault)
            {
                return HealthCheckResult.Unhealthy("The database does not answer.", fault);
            }
        }
    }
}
