using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>The engine that was in a motorcycle on a day, with the specification of its model as it stands now.</summary>
internal sealed record FittedEngine(Guid EngineId, EngineSpecification Specification)
{
    public static async Task<FittedEngine?> On(WorkshopDbContext db, Guid motorcycleId, LocalDate day, CancellationToken ct)
    {
        var found = await (
            from fitting in db.EngineFittings.AsNoTracking()
            join engine in db.Engines on fitting.EngineId equals engine.Id
            join model in db.EngineModels on engine.EngineModelId equals model.Id
            join version in db.EngineModelVersions on model.Id equals version.EngineModelId
            where fitting.MotorcycleId == motorcycleId && version.Version == model.CurrentVersion
                && fitting.FittedOn <= day && (fitting.RemovedOn == null || day < fitting.RemovedOn)
            select new { engine.Id, version.Specification }).SingleOrDefaultAsync(ct);
        return found is null ? null : new FittedEngine(found.Id, found.Specification);
    }
}
