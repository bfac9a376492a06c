using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Motorcycles;

namespace Workshop.Web.Features.CamTiming;

/// <summary>How far the chains of one motorcycle's engine are worn, and when they reach their limits.</summary>
public static class GetChainWear
{
    public sealed record Request(Guid MotorcycleId);

    /// <param name="Chains">Empty where no engine is fitted, or its model states no drive.</param>
    public sealed record Answer(Guid MotorcycleId, string Registration, OdometerUnit OdometerUnit, string Caution, IReadOnlyList<ChainWearView.Chain> Chains);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var motorcycle = await db.Motorcycles.AsNoTracking().Where(m => m.Id == request.MotorcycleId)
            .Select(m => new
            {
                m.Registration,
                Engine = db.EngineFittings.Where(f => f.MotorcycleId == m.Id && f.RemovedOn == null).Select(f => (Guid?)f.EngineId).FirstOrDefault(),
                Unit = db.Odometers.Where(o => o.MotorcycleId == m.Id && o.RemovedOn == null).Select(o => (OdometerUnit?)o.Unit).FirstOrDefault(),
            }).SingleOrDefaultAsync(ct);
        if (motorcycle is null)
        {
            return Problem.NotFound($"Motorcycle {request.MotorcycleId}");
        }

        var unit = motorcycle.Unit ?? OdometerUnit.Kilometres;
        var chains = motorcycle.Engine is { } engineId ? await Read(db, engineId, unit, ct) : [];
        return new Answer(request.MotorcycleId, motorcycle.Registration, unit, ChainWearView.Caution, chains);
    }

    private static async Task<IReadOnlyList<ChainWearView.Chain>> Read(WorkshopDbContext db, Guid engineId, OdometerUnit unit, CancellationToken ct)
    {
        var own = (await ChainsOfEngine.Load(db, [engineId], ct))[0];
        if (own.Specification.CamDrives.Count == 0)
        {
            return [];
        }

        var others = await ChainsOfEngine.EnginesRead(db, own.Engine.EngineModelId, ct);
        var all = others.Count > 1 ? await ChainsOfEngine.Load(db, [.. others.Append(engineId).Distinct()], ct) : [own];
        return ChainWearView.Of(own, ChainModels.Of(all, ct), unit);
    }
}
