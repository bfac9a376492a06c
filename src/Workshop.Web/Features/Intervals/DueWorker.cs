using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Web.Data;
using Workshop.Web.Hosting;

namespace Workshop.Web.Features.Intervals;

/// <summary>Whether and how often whole-fleet requests are looked for.</summary>
public sealed class DueWorkerOptions
{
    public const string Section = "Due";

    /// <summary>Whether this copy of the service takes them up at all.</summary>
    public bool Recomputes { get; set; } = true;

    public int PollSeconds { get; set; } = 1;

    /// <summary>How long it waits after a fault.</summary>
    public int RestSeconds { get; set; } = 5;
}

/// <summary>Reckons anew what the whole fleet is due for, when somebody asks.</summary>
internal sealed class DueWorker(
    IServiceScopeFactory scopes, DatabaseConnections connections, IClock clock, DueWorkerOptions options, ILogger<DueWorker> logger)
    : ElectedWorker<Guid>(connections, LockKey, logger)
{
    /// <summary>"due" in ASCII.</summary>
    private const long LockKey = 0x647565;

    protected override bool Works => options.Recomputes;

    protected override TimeSpan Poll => TimeSpan.FromSeconds(options.PollSeconds);

    protected override TimeSpan Rest => TimeSpan.FromSeconds(options.RestSeconds);

    protected override async Task<Guid?> Next(CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<WorkshopDbContext>().DueRecomputes.AsNoTracking()
            .Where(r => r.FinishedAt == null).OrderBy(r => r.RequestedAt).Select(r => (Guid?)r.Id).FirstOrDefaultAsync(ct);
    }

    protected override async Task Run(Guid job, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        await new FleetRecompute(scope.ServiceProvider.GetRequiredService<WorkshopDbContext>(), clock, job).Run(ct);
    }
}

internal static class DueWorkerRegistration
{
    public static void AddDueWorker(this IServiceCollection services, IConfiguration configuration)
    {
        services.AddSingleton(configuration.GetSection(DueWorkerOptions.Section).Get<DueWorkerOptions>() ?? new DueWorkerOptions());
        services.AddSingleton<DueWorker>();
        services.AddHostedService(provider => provider.GetRequiredService<DueWorker>());
    }
}
