using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>
/// Puts a message into the outbox, as a person has read it. Where a mail server is set up an e-mail is sent from there; a letter, or
/// an e-mail without one, waits to be copied. It goes to the motorcycle's owner and nobody else, with consent only.
/// </summary>
public static class QueueMessage
{
    public sealed record Request
    {
        public Guid? MotorcycleId { get; init; }

        public ContactChannel? Channel { get; init; }

        public string? Subject { get; init; }

        public string? Body { get; init; }

        /// <summary>Whether the service has a mail server; set by the caller's page or route, never by the sender.</summary>
        [JsonIgnore]
        public bool MailIsSetUp { get; init; }
    }

    public sealed record Answer(Guid Id, OutboxState State, bool ToCopy);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.MotorcycleId).IsGiven("the motorcycle that it is about");
            RuleFor(r => r.Channel).IsGiven("email or letter");
            RuleFor(r => r.Channel).NotEqual(ContactChannel.Phone).WithMessage("channel is phone: email or letter is allowed.");
            RuleFor(r => r.Subject).IsGiven("one line that says what it is about").IsAtMost(MessageRules.LongestSubject).IsOneLine();
            RuleFor(r => r.Body).IsGiven("the text").IsAtMost(MessageRules.LongestBody).IsPlainText();
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var motorcycle = await db.Motorcycles.AsNoTracking().SingleOrDefaultAsync(m => m.Id == request.MotorcycleId, ct);
        if (motorcycle?.OwnerId is not { } ownerId)
        {
            return Problem.Impossible("no-owner", "motorcycleId",
                $"motorcycleId is {request.MotorcycleId}: {(motorcycle is null ? "no motorcycle has it" : $"no owner of {motorcycle.Registration} is on record")}.");
        }

        if (!(await CustomerRows.Lock(db, ownerId, "motorcycleId", ct)).TryGet(out var owner, out var problem))
        {
            return problem;
        }

        var channel = request.Channel!.Value;
        if (!(await CustomerRows.Agreed(db, ownerId, ct)).Contains(channel))
        {
            return CustomerRows.NotAgreed("channel", channel);
        }

        if (channel == ContactChannel.Email && MessageRules.Address("to", owner.Email).Problem is { } noAddress)
        {
            return noAddress;
        }

        var now = clock.GetCurrentInstant();
        var sends = channel == ContactChannel.Email && request.MailIsSetUp;
        var message = new OutboxMessage
        {
            Id = NewId.At(clock),
            PersonId = ownerId,
            MotorcycleId = motorcycle.Id,
            Channel = channel,
            To = DraftMessage.To(channel, owner),
            Subject = request.Subject!,
            Body = request.Body!.ReplaceLineEndings("\n"),
            NextTryAt = sends ? now : null,
            CreatedBy = actor.PersonId,
            CreatedAt = now,
        };
        db.OutboxMessages.Add(message);
        await db.SaveChangesAsync(ct);
        return new Answer(message.Id, message.State, !sends);
    }
}
