using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Workshop.Web.Hosting;

/// <summary>
/// Sees to jobs that wait as rows. Of all copies of the service on one database one at a time does, by an advisory lock that goes
/// with its connection: when a copy is killed, another goes on where it stood. A job says in its row how far it is.
/// </summary>
/// <typeparam name="TJob">What names a job.</typeparam>
internal abstract partial class ElectedWorker<TJob>(DatabaseConnections connections, long lockKey, ILogger logger) : BackgroundService
    where TJob : struct
{
    /// <summary>Whether this copy of the service sees to jobs at all.</summary>
    protected abstract bool Works { get; }

    protected abstract TimeSpan Poll { get; }

    /// <summary>How long it waits after a fault.</summary>
    protected abstract TimeSpan Rest { get; }

    /// <summary>Takes up every job that is due or was left half done; nothing while another copy is at it.</summary>
    /// <returns>How many were seen through.</returns>
    public async Task<int> SeeToAll(CancellationToken ct)
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
            while (await Next(ct) is { } job)
            {
                await Run(job, ct);
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
        while (Works && !stoppingToken.IsCancellationRequested)
        {
            try
            {
                await SeeToAll(stoppingToken);
                await Task.Delay(Poll, stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault) when (fault is DbUpdateException or NpgsqlException or InvalidOperationException { InnerException: NpgsqlException })
            {
                JobFailed(logger, fault);
                await Task.Delay(Rest, stoppingToken).ContinueWith(_ => { }, TaskScheduler.Default);
            }
        }
    }

    /// <summary>The job to see to now; nothing where none is due.</summary>
    protected abstract Task<TJob?> Next(CancellationToken ct);

    /// <summary>Begins a job or goes on with it, to its end.</summary>
    protected abstract Task Run(TJob job, CancellationToken ct);

    private async Task<bool> Try(NpgsqlConnection holder, string sql, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(sql, holder);
        command.Parameters.AddWithValue(lockKey);
        return await command.ExecuteScalarAsync(ct) is true;
    }

    [LoggerMessage(LogLevel.Warning, "A job of the service's own failed and is tried again")]
    private static partial void JobFailed(ILogger logger, Exception fault);
}
