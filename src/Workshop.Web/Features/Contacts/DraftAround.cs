using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Contacts;

/// <summary>
/// A message to an owner that brings something, an estimate or the link to a record: by a template whose body names it, or in plain
/// words where there is none. Nothing is written; a person reads and sends it.
/// </summary>
/// <param name="TemplateId">The one it is made by; absent where it is in plain words.</param>
/// <param name="Agreed">Whether the owner has agreed to be reached by the channel.</param>
/// <param name="Templates">Those that name what is brought.</param>
internal sealed record DraftAround(
    Guid? TemplateId, ContactChannel Channel, bool Agreed, string To, string Subject, string Body, IReadOnlyList<DraftMessage.Choice> Templates)
{
    /// <summary>In plain words, where the workshop has no template of its own.</summary>
    public sealed record Plain(string Subject, string Body);

    /// <param name="motorcycle">That it is about.</param>
    /// <param name="owner">Who gets it.</param>
    /// <param name="templateId">Left out: the first, by name, of a channel to which the owner has agreed.</param>
    /// <param name="field">The placeholder, of <see cref="TemplateFields"/>.</param>
    /// <param name="value">What stands for it.</param>
    /// <param name="plain">Where no template names it.</param>
    public static async Task<Outcome<DraftAround>> Write(
        WorkshopDbContext db, Guid motorcycle, Person owner, Guid? templateId, string field, string value, Plain plain, IClock clock, CancellationToken ct)
    {
        var agreed = await CustomerRows.Agreed(db, owner.Id, ct);
        var templates = (await db.MessageTemplates.AsNoTracking().OrderBy(t => t.Name).ToListAsync(ct)).FindAll(t => DraftMessage.Names(t, field));
        var template = templateId is { } id
            ? templates.Find(t => t.Id == id)
            : templates.Find(t => agreed.Contains(t.Channel)) ?? templates.FirstOrDefault();
        if (template is null && templateId is not null)
        {
            return Problem.Impossible("template-unknown", "templateId", $"templateId is {templateId}: no template that names {{{field}}} has it.");
        }

        var values = await DraftMessage.ValuesOf(db, motorcycle, owner, clock, ct);
        values[field] = value;
        if (!TemplateText.Read("subject", template?.Subject ?? plain.Subject, TemplateFields.OfSubject).TryGet(out var subject, out var problem)
            || !TemplateText.Read("body", template?.Body ?? plain.Body, TemplateFields.OfBody).TryGet(out var body, out problem))
        {
            return problem;
        }

        var channel = template?.Channel ?? (agreed.Contains(ContactChannel.Email) ? ContactChannel.Email : ContactChannel.Letter);
        return new DraftAround(
            template?.Id, channel, agreed.Contains(channel), DraftMessage.To(channel, owner), subject.FillLine(values), body.Fill(values),
            [.. templates.Select(t => new DraftMessage.Choice(t.Id, t.Name, t.Channel, agreed.Contains(t.Channel)))]);
    }
}
