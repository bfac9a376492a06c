using Microsoft.EntityFrameworkCore;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Motorcycles;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Intervals;

/// <summary>Of one motorcycle, all that decides what is due, as it stands in the database.</summary>
internal sealed record DueHistory(Guid MotorcycleId, Guid EngineModelId, DueSubject Subject)
{
    /// <summary>The histories of those among the motorcycles that are on the road and have an engine and an odometer.</summary>
    public static async Task<IReadOnlyList<DueHistory>> Load(
        WorkshopDbContext db, IReadOnlyList<Guid> motorcycles, CancellationToken ct)
    {
        var fittings = await (
            from fitting in db.EngineFittings.AsNoTracking()
            join engine in db.Engines on fitting.EngineId equals engine.Id
            join motorcycle in db.Motorcycles on fitting.MotorcycleId equals motorcycle.Id
            where motorcycles.Contains(motorcycle.Id) && !motorcycle.Retired
            select new Fitted(fitting, engine.EngineModelId, motorcycle.ModelYear, motorcycle.Use, motorcycle.Options)).ToListAsync(ct);
        var models = fittings.Select(f => f.EngineModelId).Distinct().ToList();
        var specifications = await (
            from version in db.EngineModelVersions.AsNoTracking()
            join model in db.EngineModels on version.EngineModelId equals model.Id
            where models.Contains(model.Id) && version.Version == model.CurrentVersion
            select version).ToDictionaryAsync(v => v.EngineModelId, v => v.Specification, ct);
        var odometers = await Odometers.Load(db, motorcycles, ct);
        var done = (await db.DoneItems.AsNoTracking().Where(d => motorcycles.Contains(d.MotorcycleId))
            .Select(d => new Done(d.MotorcycleId, d.ServiceItemCode, new OdometerPoint(d.DoneOn, d.Distance))).ToListAsync(ct))
            .ToLookup(d => d.MotorcycleId);
        var putOffs = (await db.PutOffs.AsNoTracking().Where(p => motorcycles.Contains(p.MotorcycleId)).ToListAsync(ct))
            .ToLookup(p => p.MotorcycleId);
        var engines = fittings.Where(f => f.Fitting.RemovedOn is null).Select(f => f.Fitting.EngineId).ToList();
        var drift = await db.EngineOutlooks.AsNoTracking().Where(o => engines.Contains(o.EngineId) && o.PassesThresholdAt != null)
            .ToDictionaryAsync(o => o.EngineId, o => o.PassesThresholdAt!.Value, ct);
        var fleet = await FleetRidings.Current(db, ct);
        var together = await db.WorkshopProfiles.AsNoTracking()
            .Select(w => new TogetherWithin(w.TogetherWithin, w.TogetherWithinDays)).SingleOrDefaultAsync(ct) ?? TogetherWithin.Usual;

        var histories = new List<DueHistory>(motorcycles.Count);
        foreach (var ofOne in fittings.GroupBy(f => f.Fitting.MotorcycleId))
        {
            if (ofOne.FirstOrDefault(f => f.Fitting.RemovedOn is null) is not { } fitted || !odometers.TryGetValue(ofOne.Key, out var odometer))
            {
                continue;
            }

            var (fitting, specification) = (fitted.Fitting, specifications[fitted.EngineModelId]);
            var spans = ofOne.Select(f => f.Fitting).Where(f => f.EngineId == fitting.EngineId).ToList();
            var lastDone = LastDone.Of(DoneTo(done[ofOne.Key], spans, odometer.Standing), specification.ServiceItems);
            histories.Add(new DueHistory(ofOne.Key, fitted.EngineModelId, new DueSubject(
                specification,
                new MotorcycleFacts(fitted.ModelYear, odometer.Unit, fitted.Use, fitted.Options),
                StartOf(spans.MinBy(f => f.FittedOn)!),
                odometer.Track,
                RidingRate.Of(odometer.Track, fleet),
                lastDone,
                specification.Together ?? together)
            {
                DriftWantsAt = drift.TryGetValue(fitting.EngineId, out var passes) ? fitting.MotorcycleDistanceAt(passes) : null,
                PutOffs = Counting(putOffs[ofOne.Key], lastDone),
            }));
        }

        return histories;
    }

    private sealed record Fitted(EngineFitting Fitting, Guid EngineModelId, int ModelYear, RidingUse Use, string[] Options);

    private sealed record Done(Guid MotorcycleId, string Code, OdometerPoint Point);

    private static OdometerPoint StartOf(EngineFitting fitting) =>
        new(fitting.FittedOn, fitting.MotorcycleDistance - fitting.EngineDistance);

    /// <summary>What was done to another engine does not count for this one.</summary>
    private static IEnumerable<(string Code, OdometerPoint Point)> DoneTo(
        IEnumerable<Done> done, List<EngineFitting> spans, StandingReadings standing) =>
        done.Select(d => (d.Code, Point: standing.Corrected(d.Point)))
            .Where(d => spans.Any(f => f.FittedOn <= d.Point.On && (f.RemovedOn is null || d.Point.On <= f.RemovedOn)));

    /// <summary>Of each item the last decision, unless that took an earlier one back or the item was done since.</summary>
    private static Dictionary<string, PutOff> Counting(IEnumerable<PutOff> all, IReadOnlyDictionary<string, OdometerPoint> lastDone) => all
        .GroupBy(p => p.ServiceItemCode)
        .Select(of => of.OrderBy(p => p.DecidedAt).ThenBy(p => p.Id).Last())
        .Where(p => p.Until is not null && !(lastDone.TryGetValue(p.ServiceItemCode, out var done) && done.On >= p.DecidedOn))
        .ToDictionary(p => p.ServiceItemCode, StringComparer.Ordinal);
}
