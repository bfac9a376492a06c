using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Intervals;

/// <summary>Of one motorcycle, all that decides what is due.</summary>
/// <param name="Items">Of the current version of its engine model.</param>
/// <param name="EngineStart">Where the engine that is fitted now stood at zero, in the motorcycle's distance.</param>
/// <param name="Done">When each item was last done to this engine in this motorcycle.</param>
internal sealed record DueHistory(
    Guid MotorcycleId,
    IReadOnlyList<ServiceItem> Items,
    OdometerPoint EngineStart,
    OdometerTrack Track,
    IReadOnlyDictionary<string, OdometerPoint> Done)
{
    /// <summary>Where the drift of its valves wants them checked, in the motorcycle's distance, whatever the interval says.</summary>
    public Distance? DriftWantsAt { get; init; }

    /// <summary>What a forecast wants of an item: of the valve clearance check alone.</summary>
    public Distance? ForecastOf(ServiceItem item) => item.Kind == ServiceItemKind.ValveClearanceCheck ? DriftWantsAt : null;

    /// <summary>The histories of those among the motorcycles that are on the road and have an engine and an odometer.</summary>
    public static async Task<IReadOnlyList<DueHistory>> Load(
        WorkshopDbContext db, IReadOnlyList<Guid> motorcycles, CancellationToken ct)
    {
        var fittings = await (
            from fitting in db.EngineFittings.AsNoTracking()
            join engine in db.Engines on fitting.EngineId equals engine.Id
            join motorcycle in db.Motorcycles on fitting.MotorcycleId equals motorcycle.Id
            where motorcycles.Contains(motorcycle.Id) && !motorcycle.Retired
            select new { fitting, engine.EngineModelId }).ToListAsync(ct);
        var models = fittings.Select(f => f.EngineModelId).Distinct().ToList();
        var items = await (
            from version in db.EngineModelVersions.AsNoTracking()
            join model in db.EngineModels on version.EngineModelId equals model.Id
            where models.Contains(model.Id) && version.Version == model.CurrentVersion
            select version).ToDictionaryAsync(v => v.EngineModelId, v => v.Specification.ServiceItems, ct);
        var odometers = (await db.Odometers.AsNoTracking().Where(o => motorcycles.Contains(o.MotorcycleId)).ToListAsync(ct))
            .ToLookup(o => o.MotorcycleId);
        var readings = (await db.OdometerReadings.AsNoTracking().Where(r => motorcycles.Contains(r.MotorcycleId)).ToListAsync(ct))
            .ToLookup(r => r.MotorcycleId);
        var done = (await db.DoneItems.AsNoTracking().Where(d => motorcycles.Contains(d.MotorcycleId)).ToListAsync(ct))
            .ToLookup(d => d.MotorcycleId);

        var engines = fittings.Where(f => f.fitting.RemovedOn is null).Select(f => f.fitting.EngineId).ToList();
        var drift = await db.EngineOutlooks.AsNoTracking().Where(o => engines.Contains(o.EngineId) && o.PassesThresholdAt != null)
            .ToDictionaryAsync(o => o.EngineId, o => o.PassesThresholdAt!.Value, ct);

        var histories = new List<DueHistory>();
        foreach (var ofOne in fittings.GroupBy(f => f.fitting.MotorcycleId))
        {
            var fitted = ofOne.FirstOrDefault(f => f.fitting.RemovedOn is null);
            var odometer = odometers[ofOne.Key].MinBy(o => o.FittedOn);
            if (fitted is null || odometer is null)
            {
                continue;
            }

            var standing = StandingReadings.Of([.. readings[ofOne.Key]]);
            var spans = ofOne.Select(f => f.fitting).Where(f => f.EngineId == fitted.fitting.EngineId).ToList();
            histories.Add(new DueHistory(
                ofOne.Key,
                items[fitted.EngineModelId],
                StartOf(spans.MinBy(f => f.FittedOn)!),
                OdometerTrack.Of(
                    new OdometerPoint(odometer.FittedOn, odometer.Offset),
                    standing.Readings.Select(r => new OdometerPoint(r.ReadOn, r.Distance))),
                LastDone([.. done[ofOne.Key]], spans, standing))
            {
                DriftWantsAt = drift.TryGetValue(fitted.fitting.EngineId, out var passes) ? fitted.fitting.MotorcycleDistanceAt(passes) : null,
            });
        }

        return histories;
    }

    private static OdometerPoint StartOf(EngineFitting fitting) =>
        new(fitting.FittedOn, fitting.MotorcycleDistance - fitting.EngineDistance);

    /// <summary>What was done to another engine does not count for this one.</summary>
    private static Dictionary<string, OdometerPoint> LastDone(
        IReadOnlyList<DoneItem> done, IReadOnlyList<EngineFitting> spans, StandingReadings standing) =>
        done.Select(d => (d.ServiceItemCode, Point: standing.Corrected(new OdometerPoint(d.DoneOn, d.Distance))))
            .Where(d => spans.Any(f => f.FittedOn <= d.Point.On && (f.RemovedOn is null || d.Point.On <= f.RemovedOn)))
            .GroupBy(d => d.ServiceItemCode)
            .ToDictionary(of => of.Key, of => of.Select(d => d.Point).OrderBy(p => p.On).ThenBy(p => p.Distance).Last());
}
