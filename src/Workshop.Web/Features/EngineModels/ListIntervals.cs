using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.EngineModels;

/// <summary>When the service items of an engine model come round, by its current version.</summary>
public static class ListIntervals
{
    public sealed record Request(Guid EngineModelId);

    /// <param name="Spoken">The interval as a person says it.</param>
    public sealed record Row(
        string Code, string Name, ServiceItemKind Kind, string Spoken, ServiceInterval? Interval, Applicability? OnlyFor,
        IReadOnlyList<string> Includes, IReadOnlyList<string> SpecialTools, Provenance Provenance);

    /// <param name="Together">Which items fall together; absent where the workshop's own setting holds.</param>
    public sealed record Answer(
        Guid EngineModelId, string Maker, string Name, int Version, TogetherWithin? Together, IReadOnlyList<FittedOption> Options,
        IReadOnlyList<Row> Items);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var found = await (
            from model in db.EngineModels.AsNoTracking()
            join version in db.EngineModelVersions on model.Id equals version.EngineModelId
            where model.Id == request.EngineModelId && version.Version == model.CurrentVersion
            select new { model, version }).SingleOrDefaultAsync(ct);
        if (found is null)
        {
            return Problem.NotFound($"Engine model {request.EngineModelId}");
        }

        var specification = found.version.Specification;
        return new Answer(
            found.model.Id, found.model.Maker, found.model.Name, found.version.Version, specification.Together, specification.Options,
            [.. specification.ServiceItems.Select(i => new Row(
                i.Code, i.Name, i.Kind, i.Interval.Spoken(), i.Interval, i.OnlyFor, i.Includes, i.SpecialTools, i.Provenance))]);
    }
}
