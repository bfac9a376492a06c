using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Records;

/// <summary>
/// Makes a link to a record, puts it where the text says {record}, and puts the message into the outbox, all or nothing: with consent
/// only, to the motorcycle's owner and nobody else, as every other message. The message is the one place that keeps the link itself.
/// </summary>
public static class SendRecord
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Days for which the link lives; left out: the usual.</summary>
        public int? Days { get; init; }

        public ContactChannel? Channel { get; init; }

        public string? Subject { get; init; }

        public string? Body { get; init; }

        /// <summary>Set by the caller's page or route, never by the sender.</summary>
        [JsonIgnore]
        public bool MailIsSetUp { get; init; }

        /// <summary>What the service is called from outside; set as above.</summary>
        [JsonIgnore]
        [BindNever]
        public Func<string, Uri>? AddressOf { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Days).IsLinkLife();
            RuleFor(r => r.Channel).IsGiven("email or letter");
            RuleFor(r => r.Channel).NotEqual(ContactChannel.Phone).WithMessage("channel is phone: email or letter is allowed.");
            RuleFor(r => r.Subject).IsGiven("one line that says what it is about").IsAtMost(MessageRules.LongestSubject).IsOneLine();
            RuleFor(r => r.Body).IsGiven("the text").IsAtMost(MessageRules.LongestBody).IsPlainText();
            RuleFor(r => r.Body).Must(b => b is null || b.Contains(DraftRecordMessage.Marker, StringComparison.Ordinal))
                .WithMessage($"{{PropertyName}} has no {DraftRecordMessage.Marker}: write it where the link is to stand.");
        }
    }

    public static async Task<Outcome<QueueMessage.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var made = await CreateRecordLink.Handle(new CreateRecordLink.Request { Number = request.Number, Days = request.Days }, db, actor, clock, ct);
        if (!made.TryGet(out var link, out var problem))
        {
            return problem;
        }

        var body = request.Body!.Replace(DraftRecordMessage.Marker, request.AddressOf!(link.Path!).AbsoluteUri, StringComparison.Ordinal);
        if (body.Length > MessageRules.LongestBody)
        {
            return Problem.Impossible("body-too-long", "body", $"body has {body.Length} characters with the link in it: at most {MessageRules.LongestBody} are allowed.");
        }

        return await QueueMessage.Handle(
            new QueueMessage.Request
            {
                MotorcycleId = (await OpenCard.Find(db, request.Number, ct)).Value.Card.MotorcycleId, Channel = request.Channel, Subject = request.Subject,
                Body = body, MailIsSetUp = request.MailIsSetUp,
            },
            db, actor, clock, ct);
    }
}
