using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>A person says what becomes of a message: sent (again), counted as sent, sent by hand, or not to be sent.</summary>
public static class DecideMessage
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public MessageDecision? Decision { get; init; }

        /// <summary>Whether the service has a mail server; set by the caller's page or route, never by the sender.</summary>
        [JsonIgnore]
        public bool MailIsSetUp { get; init; }
    }

    public sealed record Answer(Guid Id, OutboxState State, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Decision).IsGiven("send, countAsSent, markAsCopied or discard");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var message = await db.OutboxMessages.SingleOrDefaultAsync(m => m.Id == request.Id, ct);
        if (message is null)
        {
            return Problem.NotFound($"Message {request.Id}");
        }

        var decision = request.Decision!.Value;
        if (!(await CustomerRows.Lock(db, message.PersonId, "id", ct)).TryGet(out _, out var problem))
        {
            return problem;
        }

        if (decision is MessageDecision.Send or MessageDecision.MarkAsCopied
            && !(await CustomerRows.Agreed(db, message.PersonId, ct)).Contains(message.Channel))
        {
            return CustomerRows.NotAgreed("decision", message.Channel);
        }

        var now = clock.GetCurrentInstant();
        if (!OutboxRules.Decide(message, decision, request.MailIsSetUp, actor.PersonId, now).TryGet(out _, out problem))
        {
            return problem;
        }

        if (decision is MessageDecision.CountAsSent or MessageDecision.MarkAsCopied)
        {
            db.Contacts.Add(MessageContacts.Of(message, actor.PersonId, now));
        }

        // A copy of the service that claimed it meanwhile has changed its version.
        var version = db.Entry(message).Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        await db.SaveChangesAsync(ct);
        return new Answer(message.Id, message.State, version.CurrentValue);
    }
}
