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

/// <summary>Changes a template; messages that were drafted from it stay as they are.</summary>
public static class EditTemplate
{
    public sealed record Request : ITemplateFields, IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Name { get; init; }

        public ContactChannel? Channel { get; init; }

        public string? Subject { get; init; }

        public string? Body { get; init; }
    }

    public sealed record Answer(Guid Id, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new TemplateFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var template = await db.MessageTemplates.SingleOrDefaultAsync(t => t.Id == request.Id, ct);
        if (template is null)
        {
            return Problem.NotFound($"Template {request.Id}");
        }

        if ((Templates.Refuses(request) ?? await Templates.NameTaken(db, request.Name!, template.Id, ct)) is { } refused)
        {
            return refused;
        }

        (template.Name, template.Channel) = (request.Name!, request.Channel!.Value);
        (template.Subject, template.Body) = (request.Subject!, request.Body!.ReplaceLineEndings("\n"));
        var row = db.Entry(template);
        row.State = EntityState.Modified;
        var version = row.Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        await db.SaveChangesAsync(ct);
        return new Answer(template.Id, version.CurrentValue);
    }
}
