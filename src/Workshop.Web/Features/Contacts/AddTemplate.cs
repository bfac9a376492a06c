using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Contacts;

/// <summary>A new text to draft messages from.</summary>
public static class AddTemplate
{
    public sealed record Request : ITemplateFields
    {
        public string? Name { get; init; }

        public ContactChannel? Channel { get; init; }

        public string? Subject { get; init; }

        public string? Body { get; init; }
    }

    public sealed record Answer(Guid Id);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new TemplateFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if ((Templates.Refuses(request) ?? await Templates.NameTaken(db, request.Name!, except: null, ct)) is { } refused)
        {
            return refused;
        }

        var template = new MessageTemplate
        {
            Id = NewId.At(clock), Name = request.Name!, Channel = request.Channel!.Value, Subject = request.Subject!,
            Body = request.Body!.ReplaceLineEndings("\n"),
        };
        db.MessageTemplates.Add(template);
        await db.SaveChangesAsync(ct);
        return new Answer(template.Id);
    }
}
