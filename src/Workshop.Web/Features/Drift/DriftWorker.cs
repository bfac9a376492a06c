using Microsoft.EntityFrameworkCore;
using NodaTime;
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

/// <summary>Refits engine models whose readings changed.</summary>
internal sealed class DriftWorker(
    IServiceScopeFactory scopes, DatabaseConnections connections, IClock clock, DriftWorkerOptions options, ILogger<DriftWorker> logger)
    : ElectedWorker<Guid>(connections, LockKey, logger)
{
    /// <summary>"drift" in ASCII.</summary>
    private const long LockKey = 0x6472696674;

    protected override bool Works => options.Refits;

    protected override TimeSpan Poll => TimeSpan.FromSeconds(options.PollSeconds);

    protected override TimeSpan Rest => TimeSpan.FromSeconds(options.QuietSeconds);

    protected override async Task<Guid?> Next(CancellationToken ct)
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

    protected override async Task Run(Guid job, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        await new ModelRefit(scope.ServiceProvider.GetRequiredService<WorkshopDbContext>(), clock, job).Run(ct);
    }
}
