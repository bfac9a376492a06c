using System.Data;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Http;

/// <summary>What a use case looks like: load, decide, save; it never commits.</summary>
public delegate Task<Outcome<TAnswer>> Handle<in TRequest, TAnswer>(
    TRequest request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct);

/// <summary>A request that changes a row and says which version of it the caller saw.</summary>
public interface IExpectsVersion
{
    uint? RowVersion { get; }
}

/// <summary>
/// The one place that runs a use case, for pages, API, importers and seeders alike: validates, opens the transaction, tells
/// the database who acts, keeps the answer under the idempotency key, commits, and turns the database's own refusals into
/// sentences. There is no retry around a commit, whose outcome may be unknown; a deadlock or a serialisation failure is
/// known to have rolled back and is tried again.
/// </summary>
public sealed class UseCases(WorkshopDbContext db, IClock clock, IServiceProvider services, Caller caller)
{
    private const int Tries = 3;

    public async Task<Outcome<TAnswer>> Read<TRequest, TAnswer>(
        TRequest request, Handle<TRequest, TAnswer> handle, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(handle);
        return Malformed(request) is { } problem ? problem : await handle(request, db, caller.Actor, clock, ct);
    }

    public async Task<Outcome<TAnswer>> Write<TRequest, TAnswer>(
        TRequest request, Handle<TRequest, TAnswer> handle, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(handle);
        if (Malformed(request) is { } problem)
        {
            return problem;
        }

        for (var attempt = 1; ; attempt++)
        {
            try
            {
                return await WriteOnce(request, handle, ct);
            }
            catch (Exception fault) when (attempt < Tries && DatabaseRefusals.WasRolledBackForOrder(fault))
            {
                db.ChangeTracker.Clear();
            }
            catch (Exception fault) when (DatabaseRefusals.Explain(fault) is not null)
            {
                db.ChangeTracker.Clear();
                return DatabaseRefusals.Explain(fault)!;
            }
        }
    }

    /// <summary>
    /// A write inside a transaction that the caller holds and commits: for work over many use cases that is all or nothing. A
    /// refusal there is the caller's bug, so it throws, and the caller's transaction goes back as a whole.
    /// </summary>
    /// <exception cref="InvalidOperationException">The use case is refused; the message says by whom and why.</exception>
    public async Task<TAnswer> WriteInside<TRequest, TAnswer>(
        TRequest request, Handle<TRequest, TAnswer> handle, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(handle);
        var problem = Malformed(request);
        if (problem is null)
        {
            await TellWhoActs(ct);
            if ((await handle(request, db, caller.Actor, clock, ct)).TryGet(out var answer, out problem))
            {
                db.ChangeTracker.Clear();
                return answer;
            }
        }

        throw new InvalidOperationException(
            $"{handle.Method.DeclaringType!.Name}, {caller.RequestId}: {problem.Sentence}");
    }

    /// <summary>
    /// A write of a secret that was typed: in a transaction as all others, but nothing of its request is kept, not even the hash that
    /// goes with an idempotency key. It must be harmless to send again.
    /// </summary>
    public async Task<Outcome<TAnswer>> WriteUnkept<TAnswer>(Func<Task<Outcome<TAnswer>>> write, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(write);
        await using var transaction = await db.Database.BeginTransactionAsync(IsolationLevel.ReadCommitted, ct);
        await TellWhoActs(ct);
        var outcome = await write();
        if (outcome.IsRefused)
        {
            await transaction.RollbackAsync(ct);
            db.ChangeTracker.Clear();
            return outcome;
        }

        await transaction.CommitAsync(ct);
        return outcome;
    }

    private async Task<Outcome<TAnswer>> WriteOnce<TRequest, TAnswer>(
        TRequest request, Handle<TRequest, TAnswer> handle, CancellationToken ct)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(IsolationLevel.ReadCommitted, ct);
        await TellWhoActs(ct);

        var useCase = handle.Method.DeclaringType!.Name;
        var hash = HashOf(useCase, request);
        if (caller.Key is { } key)
        {
            var earlier = await EarlierAnswer<TAnswer>(useCase, key, hash, ct);
            if (earlier is not null)
            {
                return earlier.Value;
            }
        }

        var outcome = await handle(request, db, caller.Actor, clock, ct);
        if (outcome.IsRefused)
        {
            // Nothing of a refused use case stays, in the database or in memory.
            await transaction.RollbackAsync(ct);
            db.ChangeTracker.Clear();
            return outcome;
        }

        if (caller.Key is not null)
        {
            db.StoredAnswers.Add(new StoredAnswer
            {
                PersonId = caller.Actor.PersonId,
                UseCase = useCase,
                Key = caller.Key,
                RequestHash = hash,
                Answer = JsonSerializer.Serialize(outcome.Value, WorkshopJson.Options),
                AnsweredAt = clock.GetCurrentInstant(),
            });
            await db.SaveChangesAsync(ct);
        }

        await transaction.CommitAsync(ct);
        return outcome;
    }

    /// <summary>For the database's own record of who changed what; gone with the transaction.</summary>
    private Task<int> TellWhoActs(CancellationToken ct) => db.Database.ExecuteSqlAsync(
        $"""
         select set_config('workshop.person', {caller.Actor.PersonId.ToString()}, true),
                set_config('workshop.request', {caller.RequestId}, true)
         """, ct);

    private async Task<Outcome<TAnswer>?> EarlierAnswer<TAnswer>(
        string useCase, string key, byte[] hash, CancellationToken ct)
    {
        var name = $"{caller.Actor.PersonId}/{useCase}/{key}";
        var free = await db.Database
            .SqlQuery<bool>($"select pg_try_advisory_xact_lock(hashtextextended({name}, 0)) as \"Value\"")
            .SingleAsync(ct);
        if (!free)
        {
            return (Outcome<TAnswer>)Problem.Conflict(
                "request-in-flight", $"A request with the key \"{key}\" is still being worked on; ask again in a moment.");
        }

        var earlier = await db.StoredAnswers.AsNoTracking().SingleOrDefaultAsync(
            a => a.PersonId == caller.Actor.PersonId && a.UseCase == useCase && a.Key == key, ct);
        if (earlier is null)
        {
            return null;
        }

        return earlier.RequestHash.AsSpan().SequenceEqual(hash)
            ? JsonSerializer.Deserialize<TAnswer>(earlier.Answer, WorkshopJson.Options)!
            : new Problem(ProblemKind.KeyReused, "key-reused",
                $"The key \"{key}\" was already used for another request; use a new one.");
    }

    private byte[] HashOf<TRequest>(string useCase, TRequest request) =>
        SHA256.HashData(Encoding.UTF8.GetBytes(
            $"{useCase}\n{caller.Target}\n{JsonSerializer.Serialize(request, WorkshopJson.Options)}"));

    private Problem? Malformed<TRequest>(TRequest request)
    {
        if (request is IExpectsVersion { RowVersion: null })
        {
            return new Problem(ProblemKind.VersionMissing, "version-missing",
                "Say which version you changed: send its ETag back as If-Match.");
        }

        if (caller.Key is { Length: 0 or > Limits.IdempotencyKey })
        {
            return Problem.Malformed([new FieldFault(Caller.KeyHeader,
                $"The idempotency key has {caller.Key.Length} characters; 1 to {Limits.IdempotencyKey} are allowed.")]);
        }

        var faults = services.GetService<IValidator<TRequest>>()?.Validate(request);
        return faults is null or { IsValid: true }
            ? null
            : Problem.Malformed([.. faults.Errors.Select(e => new FieldFault(
                FieldNames.Camel(e.PropertyName), FieldNames.WithRow(e.PropertyName, e.ErrorMessage))
            {
                OnPage = e.CustomState is OnPage page ? FieldNames.WithRow(e.PropertyName, page.Sentence) : null,
            })]);
    }
}
