using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Contacts;

namespace Workshop.Web.Features.Contacts;

/// <summary>A message that went out is a contact with its owner.</summary>
internal static class MessageContacts
{
    public static Contact Of(OutboxMessage message, Guid by, Instant at) => new()
    {
        Id = NewId.At(at),
        PersonId = message.PersonId,
        MotorcycleId = message.MotorcycleId,
        Channel = message.Channel,
        At = at,
        By = by,
        Outcome = ContactOutcome.Written,
        MessageId = message.Id,
        EnteredAt = at,
    };
}
