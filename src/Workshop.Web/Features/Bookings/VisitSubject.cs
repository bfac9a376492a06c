using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>The motorcycle that a visit is for, the engine in it, and the specification in force.</summary>
internal sealed record VisitSubject(Motorcycle Motorcycle, EngineFitting Fitting, EngineModel EngineModel, EngineModelVersion Version)
{
    public static async Task<Outcome<VisitSubject>> Find(
        WorkshopDbContext db, Guid motorcycleId, LocalDate today, CancellationToken ct)
    {
        var motorcycle = await db.Motorcycles.AsNoTracking().SingleOrDefaultAsync(m => m.Id == motorcycleId, ct);
        if (motorcycle is null)
        {
            return Problem.Impossible("motorcycle-unknown", "motorcycleId",
                $"motorcycleId is {motorcycleId}: no motorcycle has it; choose one of GET /api/v1/motorcycles.");
        }

        if (motorcycle.Retired)
        {
            return Problem.Conflict("motorcycle-retired",
                $"The {motorcycle.Maker} {motorcycle.Model} {motorcycle.Registration} is retired from the books; take it in again first.");
        }

        var found = await (
            from fitting in db.EngineFittings.AsNoTracking()
            join engine in db.Engines on fitting.EngineId equals engine.Id
            join model in db.EngineModels.AsNoTracking() on engine.EngineModelId equals model.Id
            join version in db.EngineModelVersions.AsNoTracking()
                on new { EngineModelId = model.Id, Version = model.CurrentVersion } equals new { version.EngineModelId, version.Version }
            where fitting.MotorcycleId == motorcycleId && fitting.FittedOn <= today
                && (fitting.RemovedOn == null || today < fitting.RemovedOn)
            select new { fitting, model, version }).SingleOrDefaultAsync(ct);
        return found is null
            ? Problem.Conflict("no-engine",
                $"The {motorcycle.Maker} {motorcycle.Model} {motorcycle.Registration} has no engine fitted; fit one first.")
            : new VisitSubject(motorcycle, found.fitting, found.model, found.version);
    }
}
