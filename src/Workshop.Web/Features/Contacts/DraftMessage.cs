using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Intervals;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>
/// What a template says to the owner of one motorcycle about the visit that it is due for. Nothing is written: a person reads it,
/// changes it, and puts it into the outbox.
/// </summary>
public static class DraftMessage
{
    /// <param name="TemplateId">Left out: the first one, by name, of a channel to which the owner has agreed.</param>
    public sealed record Request(Guid? MotorcycleId, Guid? TemplateId);

    /// <param name="Agreed">Whether the owner has agreed to be reached by the template's channel.</param>
    /// <param name="Notes">What is missing: no telephone of the workshop, no address of the owner.</param>
    public sealed record Answer(
        Guid MotorcycleId, string Registration, Guid PersonId, string Owner, Guid TemplateId, ContactChannel Channel, bool Agreed,
        string To, string Subject, string Body, IReadOnlyList<string> Notes, IReadOnlyList<Choice> Templates);

    public sealed record Choice(Guid Id, string Name, ContactChannel Channel, bool Agreed);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.MotorcycleId).IsGiven("the motorcycle that it is about");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var motorcycle = await db.Motorcycles.AsNoTracking().SingleOrDefaultAsync(m => m.Id == request.MotorcycleId, ct);
        if (motorcycle is null)
        {
            return Problem.NotFound($"Motorcycle {request.MotorcycleId}");
        }

        if (motorcycle.OwnerId is not { } ownerId)
        {
            return Problem.Impossible("no-owner", "motorcycleId", $"motorcycleId is that of {motorcycle.Registration}: no owner is on record.");
        }

        var owner = await db.People.AsNoTracking().SingleAsync(p => p.Id == ownerId, ct);
        var agreed = await CustomerRows.Agreed(db, ownerId, ct);
        // Templates for estimates and records are drafted with one, and stand last here.
        var templates = (await db.MessageTemplates.AsNoTracking().OrderBy(t => t.Name).ToListAsync(ct))
            .OrderBy(t => Names(t, TemplateFields.Estimate) || Names(t, TemplateFields.Record)).ToList();
        var template = request.TemplateId is { } id
            ? templates.Find(t => t.Id == id)
            : templates.Find(t => agreed.Contains(t.Channel)) ?? templates.FirstOrDefault();
        if (template is null)
        {
            return Problem.Impossible("template-unknown", "templateId",
                $"templateId is {request.TemplateId}: choose one of GET /api/v1/message-templates{(templates.Count == 0 ? ", where the manager adds one first" : "")}.");
        }

        var values = await Values(db, motorcycle, owner, clock, ct);
        if (!TemplateText.Read("subject", template.Subject, TemplateFields.OfSubject).TryGet(out var subject, out var problem)
            || !TemplateText.Read("body", template.Body, TemplateFields.OfBody).TryGet(out var body, out problem))
        {
            return problem;
        }

        return new Answer(
            motorcycle.Id, motorcycle.Registration, owner.Id, owner.Name, template.Id, template.Channel, agreed.Contains(template.Channel),
            To(template.Channel, owner), subject.FillLine(values), body.Fill(values),
            [.. Notes(template.Channel, owner, values, [.. subject.Fields, .. body.Fields])],
            [.. templates.Select(t => new Choice(t.Id, t.Name, t.Channel, agreed.Contains(t.Channel)))]);
    }

    /// <summary>The address of an e-mail, the name on a letter.</summary>
    internal static string To(ContactChannel channel, Person owner) =>
        channel == ContactChannel.Email ? owner.Email ?? "" : MessageRules.OneLine(owner.Name);

    /// <summary>Whether a template's body has a placeholder.</summary>
    internal static bool Names(MessageTemplate template, string field) => template.Body.Contains($"{{{field}}}", StringComparison.Ordinal);

    /// <summary>What stands for each placeholder in a message about a motorcycle.</summary>
    internal static async Task<Dictionary<string, string>> ValuesOf(
        WorkshopDbContext db, Guid motorcycle, Person owner, IClock clock, CancellationToken ct) =>
        await Values(db, await db.Motorcycles.AsNoTracking().SingleAsync(m => m.Id == motorcycle, ct), owner, clock, ct);

    private static async Task<Dictionary<string, string>> Values(
        WorkshopDbContext db, Motorcycle motorcycle, Person owner, IClock clock, CancellationToken ct)
    {
        var workshop = await db.WorkshopProfiles.AsNoTracking().SingleAsync(ct);
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var due = await db.DueItems.AsNoTracking().Where(d => d.MotorcycleId == motorcycle.Id)
            .OrderBy(d => d.ComesOn).ThenBy(d => d.ServiceItemCode).ToListAsync(ct);
        var lines = (await DueLine.Read(db, due, today, ct)).Where(ListCalls.IsNow).ToList();
        return new Dictionary<string, string>(StringComparer.Ordinal)
        {
            [TemplateFields.Owner] = owner.Name,
            [TemplateFields.Registration] = motorcycle.Registration,
            [TemplateFields.Motorcycle] = $"{motorcycle.Maker} {motorcycle.Model}",
            [TemplateFields.Items] = ContactWords.Items(lines.Select(l => (l.Name, l.ComesOn, l.Proposal)), today),
            [TemplateFields.Expected] = lines.Count == 0 ? "" : ContactWords.Expected(lines.Min(l => l.ComesOn), today),
            [TemplateFields.Workshop] = workshop.Name,
            [TemplateFields.Phone] = workshop.Phone ?? "",
            [TemplateFields.Estimate] = "",
            [TemplateFields.Record] = "",
        };
    }

    private static IEnumerable<string> Notes(
        ContactChannel channel, Person owner, Dictionary<string, string> values, IReadOnlyList<string> used)
    {
        if (used.Contains(TemplateFields.Phone) && values[TemplateFields.Phone].Length == 0)
        {
            yield return "The workshop's telephone is not on record: the text leaves it blank. A manager enters it under Workshop and hours.";
        }

        if (values[TemplateFields.Items].Length == 0)
        {
            yield return "The motorcycle is due for nothing: the text names no items.";
        }

        if (used.Contains(TemplateFields.Estimate))
        {
            yield return "The template is for estimates: draft it on the page of one.";
        }

        if (used.Contains(TemplateFields.Record))
        {
            yield return "The template is for service records: draft it on the page of one.";
        }

        if (channel == ContactChannel.Email && string.IsNullOrEmpty(owner.Email))
        {
            yield return "No e-mail address stands with the owner.";
        }
    }
}
