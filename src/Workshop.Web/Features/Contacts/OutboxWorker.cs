using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Workshop.Domain;
using Workshop.Domain.Contacts;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Contacts;

/// <summary>
/// Sends what waits in the outbox, in any number of copies of the service at once: each claims a row that no other has and commits
/// that, sends, and commits what came of it. A claim that ends without a result, because its copy was killed in between, is
/// uncertain: nobody but a person sends it again.
/// </summary>
internal sealed partial class OutboxWorker(
    IServiceScopeFactory scopes, IClock clock, SmtpOptions options, ILogger<OutboxWorker> logger) : BackgroundService
{
    /// <summary>How long a claim holds: longer than all steps of a conversation with the mail server can take.</summary>
    public static readonly Duration Lease = Duration.FromMinutes(10);

    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(15);

    /// <summary>Sees to claims that ended, then sends everything that is to be tried now.</summary>
    /// <returns>How many were tried.</returns>
    public async Task<int> SendAll(CancellationToken ct)
    {
        await NoteEndedClaims(ct);
        var tried = 0;
        while (options.IsSetUp && !ct.IsCancellationRequested && await Claim(ct) is { } message)
        {
            var delivered = await MailDelivery.Deliver(message, options, clock.GetCurrentInstant());
            await Note(message, delivered);
            tried++;
        }

        return tried;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (options.Sends && !stoppingToken.IsCancellationRequested)
        {
            var pause = TimeSpan.FromSeconds(options.PollSeconds);
            try
            {
                await SendAll(stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault) when (fault is DbUpdateException or NpgsqlException or InvalidOperationException { InnerException: NpgsqlException })
            {
                OutboxFailed(logger, fault);
                pause = Rest;
            }

            await Task.Delay(pause, stoppingToken).ContinueWith(_ => { }, TaskScheduler.Default);
        }
    }

    /// <summary>Who had them is gone, and whether they went out nobody here can know.</summary>
    private async Task NoteEndedClaims(CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkshopDbContext>();
        var now = clock.GetCurrentInstant();
        await db.OutboxMessages.Where(m => m.State == OutboxState.BeingSent && m.ClaimedUntil < now).ExecuteUpdateAsync(
            set => set.SetProperty(m => m.State, OutboxState.Uncertain)
                .SetProperty(m => m.LastFault, "The service stopped while it sent the message, or took too long; it may have gone out or not."),
            ct);
    }

    /// <summary>Takes the next message that no other copy has in hand, while its owner's consent stands.</summary>
    private async Task<OutboxMessage?> Claim(CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkshopDbContext>();
        var now = clock.GetCurrentInstant();
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        var message = await db.OutboxMessages.FromSql(
            $"""
             select m.*, m.xmin from outbox_messages m
             where m.state = 'waiting' and m.channel = 'email' and m.next_try_at <= {now}
               and exists (select from consents c where c.person_id = m.person_id and c.channel = 'email' and c.withdrawn_at is null)
             order by m.next_try_at, m.id
             limit 1
             for update of m skip locked
             """).SingleOrDefaultAsync(ct);
        if (message is null)
        {
            return null;
        }

        message.State = OutboxState.BeingSent;
        message.Attempts++;
        (message.ClaimId, message.ClaimedUntil) = (NewId.At(clock), now + Lease);
        message.InternetMessageId ??= $"{message.Id:N}@{options.Sender.Domain}";
        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return message;
    }

    /// <summary>
    /// Writes what came of it, also when the claim has ended meanwhile, as long as nobody has decided about the message since. It
    /// heeds no end of the service: what was sent is to be known as sent.
    /// </summary>
    private async Task Note(OutboxMessage claimed, Delivered delivered)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkshopDbContext>();
        var now = clock.GetCurrentInstant();
        await using var transaction = await db.Database.BeginTransactionAsync(CancellationToken.None);
        var message = await db.OutboxMessages
            .FromSql($"select m.*, m.xmin from outbox_messages m where m.id = {claimed.Id} and m.claim_id = {claimed.ClaimId} for update")
            .SingleOrDefaultAsync(CancellationToken.None);
        if (message?.State is not (OutboxState.BeingSent or OutboxState.Uncertain))
        {
            return;
        }

        var after = RetryPlan.Decide(delivered.Result, message.Attempts, now);
        (message.State, message.NextTryAt) = (after.State, after.NextTryAt);
        (message.ClaimId, message.ClaimedUntil) = (null, null);
        message.LastFault = delivered.Fault is { } fault ? MessageRules.OneLine(fault[..Math.Min(fault.Length, OutboxMessage.LongestFault)]) : null;
        if (after.State == OutboxState.Sent)
        {
            message.SentAt = now;
            db.Contacts.Add(MessageContacts.Of(message, message.CreatedBy, now));
        }

        await db.SaveChangesAsync(CancellationToken.None);
        await transaction.CommitAsync(CancellationToken.None);
    }

    [LoggerMessage(LogLevel.Warning, "Messages could not be seen to; tried again in a moment")]
    private static partial void OutboxFailed(ILogger logger, Exception fault);
}

internal static class OutboxRegistration
{
    public static void AddOutbox(this IServiceCollection services, IConfiguration configuration)
    {
        services.AddSingleton(SmtpOptions.Read(configuration));
        services.AddSingleton<OutboxWorker>();
        services.AddHostedService(provider => provider.GetRequiredService<OutboxWorker>());
    }
}
