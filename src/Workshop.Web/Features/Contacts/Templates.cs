using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>What is typed of a template, new or changed.</summary>
public interface ITemplateFields
{
    string? Name { get; }

    ContactChannel? Channel { get; }

    string? Subject { get; }

    string? Body { get; }
}

internal sealed class TemplateFieldsValidator : AbstractValidator<ITemplateFields>
{
    public TemplateFieldsValidator()
    {
        RuleFor(r => r.Name).IsGiven("what the template is called").IsAtMost(Limits.Name);
        RuleFor(r => r.Channel).IsGiven("email or letter");
        RuleFor(r => r.Channel).NotEqual(ContactChannel.Phone).WithMessage("channel is phone: email or letter is allowed.");
        RuleFor(r => r.Subject).IsGiven("one line that says what it is about").IsAtMost(MessageRules.LongestSubject).IsOneLine();
        RuleFor(r => r.Body).IsGiven("the text").IsAtMost(MessageRules.LongestBody).IsPlainText();
    }
}

internal static class Templates
{
    /// <summary>Invented, for the preview.</summary>
    public static readonly IReadOnlyDictionary<string, string> Example = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        [TemplateFields.Owner] = "Ida Invented",
        [TemplateFields.Registration] = "XX 123 Y",
        [TemplateFields.Motorcycle] = "Examplewerk Tourer 700",
        [TemplateFields.Items] = "- Engine oil and filter, about 20 April 2026\n- Valve clearance check, about 2 May 2026; in 900 km: do it in the same visit, saves 2 h 0 min",
        [TemplateFields.Expected] = "about 20 April 2026",
        [TemplateFields.Workshop] = "The example workshop",
        [TemplateFields.Phone] = "000 123",
        [TemplateFields.Estimate] = "Estimate 1 of job card 12, in EUR\n- Engine oil and filter, 30 min at 90.00 per hour: 45.00\nNet: 45.00\nTax 20 % of 45.00: 9.00\nTotal with tax: 54.00 EUR",
        [TemplateFields.Record] = "https://workshop.example/records/XXXXXXXX",
    };

    /// <summary>The faults of its placeholders, of subject and body alike.</summary>
    public static Problem? Refuses(ITemplateFields fields)
    {
        var faults = new[]
        {
            TemplateText.Read("subject", fields.Subject!, TemplateFields.OfSubject).Problem,
            TemplateText.Read("body", fields.Body!, TemplateFields.OfBody).Problem,
        }.OfType<Problem>().ToList();
        return faults.Count == 0 ? null : Problem.Impossible(faults[0].Code, [.. faults.SelectMany(f => f.Faults)]);
    }

    public static async Task<Problem?> NameTaken(WorkshopDbContext db, string name, Guid? except, CancellationToken ct) =>
        await db.MessageTemplates.AnyAsync(t => t.Name == name && t.Id != except, ct)
            ? Problem.Conflict("name-taken", $"name is \"{name}\": another template has it already.")
            : null;
}

/// <summary>The templates, by name, each with what it gives for an invented example.</summary>
public static class ListTemplates
{
    public sealed record Request;

    public sealed record Answer(IReadOnlyList<TemplateRow> Templates);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        new Answer([.. (await db.MessageTemplates.AsNoTracking().OrderBy(t => t.Name)
            .Select(t => new { Template = t, Version = EF.Property<uint>(t, MappingExtensions.RowVersion) }).ToListAsync(ct))
            .Select(t => TemplateRow.Of(t.Template, t.Version))]);
}

public static class GetTemplate
{
    public sealed record Request(Guid Id);

    public static async Task<Outcome<TemplateRow>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        await db.MessageTemplates.AsNoTracking().Where(t => t.Id == request.Id)
            .Select(t => new { Template = t, Version = EF.Property<uint>(t, MappingExtensions.RowVersion) }).SingleOrDefaultAsync(ct) is { } found
            ? TemplateRow.Of(found.Template, found.Version)
            : Problem.NotFound($"Template {request.Id}");
}

/// <summary>A template.</summary>
/// <param name="ExampleSubject">For an invented owner.</param>
/// <param name="ExampleBody">For an invented owner.</param>
public sealed record TemplateRow(
    Guid Id, string Name, ContactChannel Channel, string Subject, string Body, string ExampleSubject, string ExampleBody, uint RowVersion) : IHasVersion
{
    internal static TemplateRow Of(MessageTemplate template, uint version) => new(
        template.Id, template.Name, template.Channel, template.Subject, template.Body,
        Example("subject", template.Subject, TemplateFields.OfSubject, (text, values) => text.FillLine(values)),
        Example("body", template.Body, TemplateFields.OfBody, (text, values) => text.Fill(values)),
        version);

    internal static string Example(
        string field, string text, IReadOnlyList<string> allowed, Func<TemplateText, IReadOnlyDictionary<string, string>, string> fill) =>
        TemplateText.Read(field, text, allowed).TryGet(out var read, out var problem) ? fill(read, Templates.Example) : problem.Sentence;
}
