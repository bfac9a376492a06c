using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>All versions of an engine model, the newest first, with what whoever published them said.</summary>
public static class ListVersions
{
    public sealed record Request(Guid Id);

    public sealed record Answer(Guid Id, int CurrentVersion, IReadOnlyList<Row> Versions);

    /// <param name="OpenVisits">Booked or under way with this version, which they keep.</param>
    public sealed record Row(int Version, Instant CreatedAt, string CreatedBy, string? Note, int OpenVisits);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var current = await db.EngineModels.Where(m => m.Id == request.Id).Select(m => (int?)m.CurrentVersion).SingleOrDefaultAsync(ct);
        if (current is null)
        {
            return Problem.NotFound($"Engine model {request.Id}");
        }

        var rows = await (
            from version in db.EngineModelVersions.AsNoTracking()
            join person in db.People on version.CreatedBy equals person.Id
            where version.EngineModelId == request.Id
            orderby version.Version descending
            select new Row(version.Version, version.CreatedAt, person.Name, version.Note, db.JobCards.Count(c =>
                c.EngineModelVersionId == version.Id && (c.State == JobCardState.Booked || c.State == JobCardState.CheckedIn)))).ToListAsync(ct);
        return new Answer(request.Id, current.Value, rows);
    }
}
