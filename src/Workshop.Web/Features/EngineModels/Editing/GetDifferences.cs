using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>Where a version of an engine model differs from an earlier or later one.</summary>
public static class GetDifferences
{
    /// <param name="From">Absent: the version before.</param>
    public sealed record Request(Guid Id, int Version, int? From = null);

    public sealed record Answer(
        Guid Id, string Maker, string Name, bool Invented, int From, int Version, string? Note, IReadOnlyList<Difference> Differences);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var model = await db.EngineModels.AsNoTracking().SingleOrDefaultAsync(m => m.Id == request.Id, ct);
        if (model is null)
        {
            return Problem.NotFound($"Engine model {request.Id}");
        }

        var from = request.From ?? Math.Max(1, request.Version - 1);
        var versions = await db.EngineModelVersions.AsNoTracking()
            .Where(v => v.EngineModelId == request.Id && (v.Version == request.Version || v.Version == from))
            .ToDictionaryAsync(v => v.Version, ct);
        foreach (var wanted in new[] { request.Version, from })
        {
            if (!versions.ContainsKey(wanted))
            {
                return Problem.NotFound($"Version {wanted} of engine model {request.Id}");
            }
        }

        return new Answer(
            model.Id, model.Maker, model.Name, model.Invented, from, request.Version, versions[request.Version].Note,
            DifferenceWords.Say(DraftBooks.Json(versions[from].Specification), DraftBooks.Json(versions[request.Version].Specification)));
    }
}
