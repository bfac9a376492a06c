using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Workshop.Web.Data;
using Workshop.Web.Hosting;

namespace Workshop.Web.Features.Drift;

/// <summary>When refits are taken up.</summary>
public sealed class DriftWorkerOptions
{
    public const string Section = "Drift";

    /// <summary>Whether this copy of the service takes up refits at all.</summary>
    public bool Refits { get; set; } = true;

    /// <summary>A model is refitted when its readings have not changed for so long ...</summary>
    public int QuietSeconds { get; set; } = 5;

    /// <summary>... or when the first change has waited for so long.</summary>
    public int LongestWaitSeconds { get; set; } = 60;

    public int PollSeconds { get; set; } = 1;
}

/// <summary>
/// Refits engine models whose readings changed. Of all copies of the service on one database one at a time does, by an advisory
/// lock that goes with its connection: when a copy is killed, another goes on where it stood.
/// </summary>
internal sealed partial class DriftWorker(
    IServiceScopeFactory scopes, DatabaseConnections connections, IClock clock, DriftWorkerOptions options, ILogger<DriftWorker> logger) : BackgroundService
{
    /// <summary>"drift" in ASCII.</summary>
    private const long LockKey = 0x6472696674;

    /// <summary>Takes up every refit that is due or was left half done; nothing while another copy is at it.</summary>
    /// <returns>How many were seen through.</returns>
    public async Task<int> SeeToRefits(CancellationToken ct)
    {
        if (await Next(ct) is null)
        {
            return 0;
        }

        // The lock belongs to its session, which a pooler would share out.
        await using var holder = new NpgsqlConnection(connections.Direct);
        await holder.OpenAsync(ct);
        if (!await Try(holder, "select pg_try_advisory_lock($1)", ct))
        {
            return 0;
        }

        var seen = 0;
        try
        {
            while (await Next(ct) is { } model)
            {
                await using var scope = scopes.CreateAsyncScope();
                var db = scope.ServiceProvider.GetRequiredService<WorkshopDbContext>();
                await new ModelRefit(db, clock, model).Run(ct);
                seen++;
            }
        }
        finally
        {
            await Try(holder, "select pg_advisory_unlock($1)", CancellationToken.None);
        }

        return seen;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (options.Refits && !stoppingToken.IsCancellationRequested)
        {
            try
            {
                await SeeToRefits(stoppingToken);
                await Task.Delay(TimeSpan.FromSeconds(options.PollSeconds), stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault) when (fault is DbUpdateException or NpgsqlException or InvalidOperationException { InnerException: NpgsqlException })
            {
                RefitFailed(logger, fault);
                await Task.Delay(TimeSpan.FromSeconds(options.QuietSeconds), stoppingToken).ContinueWith(_ => { }, TaskScheduler.Default);
            }
        }
    }

    private async Task<Guid?> Next(CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkshopDbContext>();
        var now = clock.GetCurrentInstant();
        var (quiet, waited) = (now - Duration.FromSeconds(options.QuietSeconds), now - Duration.FromSeconds(options.LongestWaitSeconds));
        return await db.DriftRefits.AsNoTracking()
            .Where(r => (r.StartedAt != null && r.FinishedAt == null)
                || (r.WantedSince != null && (r.RequestedAt <= quiet || r.WantedSince <= waited)))
            .OrderBy(r => r.StartedAt == null || r.FinishedAt != null).ThenBy(r => r.WantedSince).ThenBy(r => r.EngineModelId)
            .Select(r => (Guid?)r.EngineModelId)
            .FirstOrDefaultAsync(ct);
    }

    private static async Task<bool> Try(NpgsqlConnection holder, string sql, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(sql, holder);
        command.Parameters.AddWithValue(LockKey);
        return await command.ExecuteScalarAsync(ct) is true;
    }

    [LoggerMessage(LogLevel.Warning, "A refit of an engine model's drift failed and is tried again")]
    private static partial void RefitFailed(ILogger logger, Exception fault);
}
