using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Records;

/// <summary>
/// A message that brings the owner the link to a record: by a template that names {record}, or in plain words where there is none.
/// {record} stays in the text: the link is made, and put in there, when the message goes into the outbox.
/// </summary>
public static class DraftRecordMessage
{
    /// <param name="TemplateId">Left out: the first, by name, of a channel to which the owner has agreed.</param>
    public sealed record Request(int Number, Guid? TemplateId = null);

    /// <param name="Agreed">Whether the owner has agreed to be reached by the channel.</param>
    /// <param name="Templates">Those that name {record}.</param>
    public sealed record Answer(
        int JobCardNumber, Guid MotorcycleId, string Owner, Guid? TemplateId, ContactChannel Channel, bool Agreed, string To, string Subject, string Body,
        IReadOnlyList<DraftMessage.Choice> Templates);

    /// <summary>Where the link will stand.</summary>
    internal const string Marker = $"{{{TemplateFields.Record}}}";

    private static readonly DraftAround.Plain Plain = new(
        "Service record of {registration}",
        "Dear {owner},\n\nthe work on your {motorcycle}, {registration}, is done. What was done, what was measured and what is due next stands here:\n\n{record}\n\n"
        + "Whoever has this link can read the record, so pass it on with care; it works for a limited time. For any question call {phone}, or answer this message.\n\n{workshop}\n");

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if ((await GetRecord.Handle(new GetRecord.Request(request.Number), db, actor, clock, ct)).Problem is { } problem)
        {
            return problem;
        }

        var card = (await OpenCard.Find(db, request.Number, ct)).Value.Card;
        var owner = await (
            from motorcycle in db.Motorcycles.AsNoTracking()
            join person in db.People on motorcycle.OwnerId equals person.Id
            where motorcycle.Id == card.MotorcycleId
            select person).SingleOrDefaultAsync(ct);
        if (owner is null)
        {
            return Problem.Impossible("no-owner", "number", $"number is {request.Number}: no owner of its motorcycle is on record.");
        }

        var drafted = await DraftAround.Write(db, card.MotorcycleId, owner, request.TemplateId, TemplateFields.Record, Marker, Plain, clock, ct);
        return drafted.TryGet(out var draft, out problem)
            ? new Answer(
                request.Number, card.MotorcycleId, owner.Name, draft.TemplateId, draft.Channel, draft.Agreed, draft.To, draft.Subject, draft.Body,
                draft.Templates)
            : problem;
    }
}
