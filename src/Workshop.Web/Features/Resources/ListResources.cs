using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>Bays, technicians, special tools and parking places, by kind and name.</summary>
public static class ListResources
{
    /// <param name="Kind">Only of that kind.</param>
    /// <param name="Retired">Those that were retired, too.</param>
    public sealed record Request(string? Kind = null, bool Retired = false);

    public sealed record Answer(IReadOnlyList<Row> Resources);

    /// <param name="Capabilities">Of a bay what it has, of a technician the skills, of a tool the codes that items ask for it by.</param>
    /// <param name="Grade">Of technicians only.</param>
    /// <param name="Person">The technician's name.</param>
    public sealed record Row(
        Guid Id,
        ResourceKind Kind,
        string Name,
        IReadOnlyList<string> Capabilities,
        TechnicianGrade? Grade,
        Guid? PersonId,
        string? Person,
        bool Retired,
        uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Kind).IsWordOf<Request, ResourceKind>();
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var kind = Words.Read<ResourceKind>(request.Kind);
        var rows = await Rows(db, db.Resources.AsNoTracking()
            .Where(r => (kind == null || r.Kind == kind) && (request.Retired || !r.Retired)), ct);
        return new Answer([.. rows.OrderBy(r => r.Kind).ThenBy(r => r.Name, StringComparer.Ordinal)]);
    }

    internal static async Task<List<Row>> Rows(WorkshopDbContext db, IQueryable<Resource> resources, CancellationToken ct) => await (
        from resource in resources
        join person in db.People on resource.PersonId equals person.Id into people
        from person in people.DefaultIfEmpty()
        select new Row(
            resource.Id, resource.Kind, resource.Name, resource.Capabilities, resource.Grade, resource.PersonId, person!.Name, resource.Retired,
            EF.Property<uint>(resource, MappingExtensions.RowVersion))).ToListAsync(ct);
}
