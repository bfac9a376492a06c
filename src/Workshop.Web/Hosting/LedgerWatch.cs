using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using NodaTime;
using Workshop.Web.Data;

namespace Workshop.Web.Hosting;

/// <summary>
/// Looks after the start and once a day whether the ledger and the balances of the stores agree (the view <c>stock_differences</c>).
/// Where they do not, it says so in the log and the service is degraded, not down: it goes on working, and a person has to look.
/// </summary>
internal sealed partial class LedgerWatch(IServiceScopeFactory scopes, IConfiguration configuration, ILogger<LedgerWatch> log)
    : BackgroundService, IHealthCheck
{
    private const string Setting = "Stores:WatchLedger";
    private static readonly Duration Between = Duration.FromDays(1);

    private long? differences;

    /// <summary>Looks now, and remembers what was found.</summary>
    public async Task<long> Look(CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var found = await scope.ServiceProvider.GetRequiredService<WorkshopDbContext>().Database
            .SqlQuery<long>($"select count(*) as \"Value\" from stock_differences").SingleAsync(ct);
        differences = found;
        if (found > 0)
        {
            LogDifferences(log, found);
        }

        return found;
    }

    public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        Task.FromResult(differences is > 0 and var found
            ? HealthCheckResult.Degraded($"{found} balances of the stores are not the sum of their movements.")
            : HealthCheckResult.Healthy());

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (!configuration.GetValue(Setting, defaultValue: true))
        {
            return;
        }

        using var timer = new PeriodicTimer(Between.ToTimeSpan());
        do
        {
            try
            {
                await Look(stoppingToken);
            }
            catch (Npgsql.NpgsqlException fault)
            {
                LogUnseen(log, fault);
            }
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    [LoggerMessage(LogLevel.Error, "{Count} balances of the stores are not the sum of their movements; /stores/check lists them")]
    private static partial void LogDifferences(ILogger logger, long count);

    [LoggerMessage(LogLevel.Warning, "Whether ledger and balances agree could not be looked at; it is tried again tomorrow")]
    private static partial void LogUnseen(ILogger logger, Exception fault);
}
