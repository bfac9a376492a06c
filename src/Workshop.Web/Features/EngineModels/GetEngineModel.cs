using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

/// <summary>One engine model with one version of its specification: the current one, or the one that a job card pinned.</summary>
public static class GetEngineModel
{
    public sealed record Request(Guid Id, int? Version = null);

    /// <param name="Versions">All of them, the newest first.</param>
    /// <param name="AskSecondPerson">Codes of the fasteners at which the workshop asks for a second person, whatever the version.</param>
    public sealed record Answer(
        Guid Id,
        string Maker,
        string Name,
        bool Invented,
        int CurrentVersion,
        int Version,
        Instant CreatedAt,
        string? CreatedBy,
        EngineSpecification Specification,
        IReadOnlyList<Edition> Versions,
        IReadOnlyList<string> AskSecondPerson,
        AsLeftAsked AsLeftSecondPerson,
        uint RowVersion) : IHasVersion;

    /// <summary>Whether a second person confirms the readings as left: of all engine models, of this one.</summary>
    public sealed record AsLeftAsked(bool OfAll, bool OfThis);

    public sealed record Edition(int Version, Instant CreatedAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var found = await (
            from model in db.EngineModels.AsNoTracking()
            join version in db.EngineModelVersions on model.Id equals version.EngineModelId
            join person in db.People on version.CreatedBy equals person.Id
            where model.Id == request.Id && version.Version == (request.Version ?? model.CurrentVersion)
            select new { model, version, person.Name, RowVersion = EF.Property<uint>(model, MappingExtensions.RowVersion) })
            .SingleOrDefaultAsync(ct);
        if (found is null)
        {
            return Problem.NotFound(request.Version is { } wanted ? $"Version {wanted} of engine model {request.Id}" : $"Engine model {request.Id}");
        }

        var versions = await db.EngineModelVersions.AsNoTracking()
            .Where(v => v.EngineModelId == request.Id)
            .OrderByDescending(v => v.Version)
            .Select(v => new Edition(v.Version, v.CreatedAt))
            .ToListAsync(ct);
        var asked = await db.SecondPersonMarks.AsNoTracking().Where(m => m.EngineModelId == request.Id)
            .OrderBy(m => m.FastenerCode).Select(m => m.FastenerCode).ToListAsync(ct);
        var asLeft = await db.AsLeftMarks.AsNoTracking().Where(m => m.EngineModelId == null || m.EngineModelId == request.Id)
            .Select(m => m.EngineModelId).ToListAsync(ct);
        return new Answer(
            found.model.Id, found.model.Maker, found.model.Name, found.model.Invented, found.model.CurrentVersion,
            found.version.Version, found.version.CreatedAt, found.Name, found.version.Specification, versions, asked,
            new AsLeftAsked(asLeft.Contains(null), asLeft.Contains(request.Id)), found.RowVersion);
    }
}
