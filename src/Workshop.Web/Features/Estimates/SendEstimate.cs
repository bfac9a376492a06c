using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>
/// Puts an estimate, as a person has read it, into the outbox: with consent only, to the motorcycle's owner and nobody else, as every
/// other message.
/// </summary>
public static class SendEstimate
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        public ContactChannel? Channel { get; init; }

        public string? Subject { get; init; }

        public string? Body { get; init; }

        /// <summary>Set by the caller's page or route, never by the sender.</summary>
        [JsonIgnore]
        public bool MailIsSetUp { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Channel).IsGiven("email or letter");
            RuleFor(r => r.Channel).NotEqual(ContactChannel.Phone).WithMessage("channel is phone: email or letter is allowed.");
            RuleFor(r => r.Subject).IsGiven("one line that says what it is about").IsAtMost(MessageRules.LongestSubject).IsOneLine();
            RuleFor(r => r.Body).IsGiven("the text").IsAtMost(MessageRules.LongestBody).IsPlainText();
        }
    }

    public static async Task<Outcome<QueueMessage.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var motorcycle = await (
            from estimate in db.Estimates
            join card in db.JobCards on estimate.JobCardNumber equals card.Number
            where estimate.Id == request.Id
            select (Guid?)card.MotorcycleId).SingleOrDefaultAsync(ct);
        return motorcycle is null
            ? Problem.NotFound($"Estimate {request.Id}")
            : await QueueMessage.Handle(
                new QueueMessage.Request
                {
                    MotorcycleId = motorcycle, Channel = request.Channel, Subject = request.Subject, Body = request.Body, MailIsSetUp = request.MailIsSetUp,
                },
                db, actor, clock, ct);
    }
}
