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

/// <summary>The outbox, newest first: all of it, of one state, or what concerns one motorcycle.</summary>
public static class ListMessages
{
    public sealed record Request
    {
        public string? After { get; init; }

        public int? Take { get; init; }

        public string? State { get; init; }

        public Guid? MotorcycleId { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.State).IsWordOf<Request, OutboxState>();
            RuleFor(r => r.After).Must(after => string.IsNullOrEmpty(after) || RowPlace.TryParse(after, out _))
                .WithMessage((_, after) => $"after is \"{after}\": send what an earlier page gave as next.");
        }
    }

    public static async Task<Outcome<Slice<MessageRow>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var messages = db.OutboxMessages.AsNoTracking();
        if (Words.Read<OutboxState>(request.State) is { } state)
        {
            messages = messages.Where(m => m.State == state);
        }

        if (request.MotorcycleId is { } motorcycle)
        {
            messages = messages.Where(m => m.MotorcycleId == motorcycle);
        }

        if (RowPlace.TryParse(request.After, out var after))
        {
            messages = messages.Where(m => EF.Functions.LessThan(ValueTuple.Create(m.CreatedAt, m.Id), ValueTuple.Create(after.At, after.Id)));
        }

        return await MessageRow.Of(db, messages).ToSlice(request.Take, m => new RowPlace(m.CreatedAt, m.Id).ToString(), ct);
    }
}

/// <summary>One message with its text.</summary>
public static class GetMessage
{
    public sealed record Request(Guid Id);

    public static async Task<Outcome<MessageRow>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        await MessageRow.Of(db, db.OutboxMessages.AsNoTracking().Where(m => m.Id == request.Id)).SingleOrDefaultAsync(ct) is { } row
            ? row
            : Problem.NotFound($"Message {request.Id}");
}

/// <summary>A message as the outbox shows it.</summary>
public sealed record MessageRow : IHasVersion
{
    public required Guid Id { get; init; }

    public required OutboxState State { get; init; }

    public required ContactChannel Channel { get; init; }

    public required Guid PersonId { get; init; }

    public required string Owner { get; init; }

    public required Guid MotorcycleId { get; init; }

    public required string Registration { get; init; }

    /// <summary>Blank, as subject and body are, once the person was erased.</summary>
    public required string To { get; init; }

    public required string Subject { get; init; }

    public required string Body { get; init; }

    public required int Attempts { get; init; }

    /// <summary>Absent on one that waits: it is to be copied and sent by hand.</summary>
    public Instant? NextTryAt { get; init; }

    public string? LastFault { get; init; }

    public required string CreatedBy { get; init; }

    public required Instant CreatedAt { get; init; }

    /// <summary>Who sent it by hand or said that it counts as sent; absent where the service sent it.</summary>
    public string? SentBy { get; init; }

    public Instant? SentAt { get; init; }

    public required uint RowVersion { get; init; }

    /// <summary>Nobody but a person sends it.</summary>
    [JsonIgnore]
    public bool ToCopy => State == OutboxState.Waiting && NextTryAt is null;

    internal static IQueryable<MessageRow> Of(WorkshopDbContext db, IQueryable<OutboxMessage> messages) =>
        from message in messages
        join owner in db.People on message.PersonId equals owner.Id
        join motorcycle in db.Motorcycles on message.MotorcycleId equals motorcycle.Id
        join author in db.People on message.CreatedBy equals author.Id
        join sender in db.People on message.SentBy equals sender.Id into senders
        from sent in senders.DefaultIfEmpty()
        orderby message.CreatedAt descending, message.Id descending
        select new MessageRow
        {
            Id = message.Id,
            State = message.State,
            Channel = message.Channel,
            PersonId = message.PersonId,
            Owner = owner.Name,
            MotorcycleId = message.MotorcycleId,
            Registration = motorcycle.Registration,
            To = message.To,
            Subject = message.Subject,
            Body = message.Body,
            Attempts = message.Attempts,
            NextTryAt = message.NextTryAt,
            LastFault = message.LastFault,
            CreatedBy = author.Name,
            CreatedAt = message.CreatedAt,
            SentBy = sent!.Name,
            SentAt = message.SentAt,
            RowVersion = EF.Property<uint>(message, MappingExtensions.RowVersion),
        };
}
