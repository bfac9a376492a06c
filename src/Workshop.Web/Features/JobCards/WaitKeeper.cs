using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.JobCards;

/// <summary>
/// An engine that lies open longer than was expected still stands in its bay: while nobody says that it goes on, the bay is taken an
/// hour further, again and again. What was said of when it is expected stays what somebody said. Any number of copies of the service
/// may do it: the card's row is locked, and whoever comes second finds nothing left to do.
/// </summary>
internal sealed partial class WaitKeeper(IServiceScopeFactory scopes, IClock clock, IConfiguration configuration, ILogger<WaitKeeper> logger)
    : BackgroundService
{
    public const string Setting = "Waits:Keep";

    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(1);
    private static readonly Duration Further = Duration.FromHours(1);

    /// <summary>Before its time is over: a slot that is looked for meanwhile finds the bay taken.</summary>
    private static readonly Duration Ahead = Duration.FromMinutes(10);

    /// <summary>Takes the places of all that wait beyond their time further.</summary>
    /// <returns>How many were.</returns>
    public async Task<int> KeepAll(CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkshopDbContext>();
        var soon = clock.GetCurrentInstant() + Ahead;
        var numbers = await (
            from wait in db.VisitWaits
            join card in db.JobCards on wait.JobCardNumber equals card.Number
            where wait.EndedAt == null && wait.ExpectedUntil < soon && card.State == JobCardState.CheckedIn
            orderby wait.JobCardNumber
            select wait.JobCardNumber).ToListAsync(ct);
        var kept = 0;
        foreach (var number in numbers)
        {
            kept += await Keep(db, number, ct) ? 1 : 0;
            db.ChangeTracker.Clear();
        }

        return kept;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause);
        while (configuration.GetValue(Setting, true))
        {
            try
            {
                await timer.WaitForNextTickAsync(stoppingToken);
                await KeepAll(stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault) when (fault is DbUpdateException or NpgsqlException or InvalidOperationException { InnerException: NpgsqlException })
            {
                NotKept(logger, fault);
            }
        }
    }

    private async Task<bool> Keep(WorkshopDbContext db, int number, CancellationToken ct)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        if (!(await VisitState.ForWork(db, number, ct)).TryGet(out var visit, out _) || visit.SoFar.Waits is null)
        {
            return false;
        }

        var now = clock.GetCurrentInstant();
        var (stands, held) = (visit.StandsIn(now), visit.Taken.Where(t => t.Row.Phase == VisitPhase.Waiting).Select(t => t.Row).ToList());
        if (stands is null || held.Exists(r => r.ResourceId == stands && r.Span.End > now + Ahead))
        {
            return false;
        }

        // Where another visit has the place next, there is nothing to take further; late running shows whom that pushes.
        var end = held.Where(r => r.ResourceId == stands).Select(r => r.Span.End).DefaultIfEmpty(now).Max();
        if ((await Occupied.During(db, new Interval(now, Instant.Max(end, now) + Ahead), ct)).Any(t => t.Resource.Id == stands && t.By != number))
        {
            return false;
        }

        await TakeWhatIsFree.Lock(db, visit.Taken.Select(t => t.Resource.Id).Append(stands.Value), ct);
        var keepsTools = visit.Taken.Any(t => t.Resource.Kind == ResourceKind.SpecialTool && t.Row.Phase == VisitPhase.Waiting);
        await WaitingPlace.Keep(db, visit, now + Further, keepsTools, await WorkshopTimes.Read(db, ct), clock, ct);
        await transaction.CommitAsync(ct);
        return true;
    }

    [LoggerMessage(LogLevel.Warning, "The bays of engines that wait could not be kept; tried again in a minute")]
    private static partial void NotKept(ILogger logger, Exception fault);
}

internal static class WaitKeeperRegistration
{
    public static void AddWaitKeeper(this IServiceCollection services)
    {
        services.AddSingleton<WaitKeeper>();
        services.AddHostedService(provider => provider.GetRequiredService<WaitKeeper>());
    }
}
