using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Drift;

/// <summary>What is known and estimated of one lobe.</summary>
internal sealed record LobeDrift(ClearanceLimits Limits, LobeHistory History, StraightLineDrift Estimate);

/// <summary>Of one engine, all that decides how its valves drift.</summary>
/// <param name="Specification">The current version of its engine model, whose limits hold for what comes.</param>
/// <param name="Fitting">The motorcycle that it is in now; absent where it is in none.</param>
/// <param name="Track">What that motorcycle had done by date.</param>
internal sealed record EngineDrift(
    Guid EngineId, EngineSpecification Specification, EngineHistory History, EngineFitting? Fitting, OdometerTrack? Track)
{
    private readonly RidingRate? rate = Track is null ? null : RidingRate.Of(Track);

    /// <summary>Where the motorcycle's rate, and with it every date here, comes from.</summary>
    public RateBasis? RateBasis => rate?.Basis;

    /// <summary>
    /// The day on which the engine has done a distance, or had: by the odometer's readings and its own rate. Nothing where the
    /// engine is in no motorcycle, or where the rate does not get there within twenty years.
    /// </summary>
    public LocalDate? DayOf(Distance? engineDistance)
    {
        if (engineDistance is not { } distance || Fitting is null || Track is null)
        {
            return null;
        }

        var day = NextDue.Reach(Fitting.MotorcycleDistanceAt(distance), Track, rate!).Expected;
        return day < Track.Last.On.PlusDays(NextDue.HorizonDays) ? day : null;
    }

    /// <summary>Every lobe in order of valve, those never read too.</summary>
    public IReadOnlyList<LobeDrift> Lobes() => [.. ReadingRules.LobesOf(Specification).Select(lobe =>
    {
        var limits = ReadingRules.LimitsOf(Specification, lobe);
        var history = Legs.Of(History, lobe, limits.LeverRatio);
        return new LobeDrift(limits, history, StraightLineDrift.Estimate(history, limits));
    })];

    /// <summary>Reads the engines asked for, in order of id, with one query a table however many they are.</summary>
    public static async Task<IReadOnlyList<EngineDrift>> Load(
        WorkshopDbContext db, IReadOnlyCollection<Guid> engines, CancellationToken ct)
    {
        var specifications = await Specifications(db, engines, ct);
        var fittings = (await db.EngineFittings.AsNoTracking().Where(f => engines.Contains(f.EngineId)).ToListAsync(ct))
            .ToLookup(f => f.EngineId);
        var motorcycles = fittings.SelectMany(f => f).Select(f => f.MotorcycleId).Distinct().ToList();
        var odometer = await db.OdometerReadings.AsNoTracking().Where(r => motorcycles.Contains(r.MotorcycleId)).ToListAsync(ct);
        var instruments = (await db.Odometers.AsNoTracking().Where(o => motorcycles.Contains(o.MotorcycleId)).ToListAsync(ct))
            .ToLookup(o => o.MotorcycleId);
        var readOn = StandingByAnyId(odometer).ToLookup(r => r.Standing.MotorcycleId);
        var readings = (await db.ClearanceReadings.AsNoTracking().Where(r => engines.Contains(r.EngineId)).ToListAsync(ct))
            .ToLookup(r => r.EngineId);
        var shims = (await db.ShimObservations.AsNoTracking().Where(s => engines.Contains(s.EngineId)).ToListAsync(ct))
            .ToLookup(s => s.EngineId);
        var events = (await db.ValveEvents.AsNoTracking().Where(e => engines.Contains(e.EngineId)).ToListAsync(ct))
            .ToLookup(e => e.EngineId);
        var parts = (await db.PartChanges.AsNoTracking().Where(c => engines.Contains(c.EngineId)).ToListAsync(ct))
            .ToLookup(c => c.EngineId);

        return [.. engines.Order().Where(specifications.ContainsKey).Select(id =>
        {
            var history = new EngineHistory(
                [.. readings[id]], [.. shims[id]], [.. events[id]], [.. parts[id]], EngineDistances([.. fittings[id]], readOn))
            {
                FirstCheckDue = FirstCheckDue(specifications[id]),
            };
            var fitting = fittings[id].SingleOrDefault(f => f.RemovedOn is null);
            var track = fitting is null ? null : TrackOf(instruments[fitting.MotorcycleId], readOn[fitting.MotorcycleId]);
            return new EngineDrift(id, specifications[id], history, fitting, track);
        })];
    }

    private static OdometerTrack? TrackOf(
        IEnumerable<Odometer> instruments, IEnumerable<(Guid Id, OdometerReading Standing)> readings) =>
        instruments.MinBy(o => o.FittedOn) is { } first
            ? OdometerTrack.Of(
                new OdometerPoint(first.FittedOn, first.Offset),
                readings.Where(r => r.Id == r.Standing.Id).Select(r => new OdometerPoint(r.Standing.ReadOn, r.Standing.Distance)))
            : null;

    private static async Task<IReadOnlyDictionary<Guid, EngineSpecification>> Specifications(
        WorkshopDbContext db, IReadOnlyCollection<Guid> engines, CancellationToken ct)
    {
        var models = await db.Engines.AsNoTracking().Where(e => engines.Contains(e.Id))
            .Select(e => new { e.Id, e.EngineModelId }).ToListAsync(ct);
        var used = models.Select(m => m.EngineModelId).Distinct().ToList();
        var versions = await (
            from model in db.EngineModels.AsNoTracking()
            join version in db.EngineModelVersions on new { model.Id, Version = model.CurrentVersion }
                equals new { Id = version.EngineModelId, version.Version }
            where used.Contains(model.Id)
            select version).ToDictionaryAsync(v => v.EngineModelId, v => v.Specification, ct);
        return models.ToDictionary(m => m.Id, m => versions[m.EngineModelId]);
    }

    /// <summary>A row may name an odometer reading that was corrected later; the correction counts.</summary>
    private static IEnumerable<(Guid Id, OdometerReading Standing)> StandingByAnyId(IReadOnlyList<OdometerReading> readings)
    {
        var corrections = readings.Where(r => r.SupersedesId is not null).ToDictionary(r => r.SupersedesId!.Value);
        foreach (var reading in readings)
        {
            var standing = reading;
            while (corrections.TryGetValue(standing.Id, out var later))
            {
                standing = later;
            }

            yield return (reading.Id, standing);
        }
    }

    private static Dictionary<Guid, Distance> EngineDistances(
        IReadOnlyList<EngineFitting> fittings, ILookup<Guid, (Guid Id, OdometerReading Standing)> readings)
    {
        var distances = new Dictionary<Guid, Distance>();
        foreach (var motorcycle in fittings.GroupBy(f => f.MotorcycleId))
        {
            var inOrder = motorcycle.OrderBy(f => f.FittedOn).ToList();
            foreach (var (id, reading) in readings[motorcycle.Key])
            {
                // On the day of a removal both visits are possible; the later fitting wins, and before the first the first.
                var fitting = inOrder.LastOrDefault(f => f.FittedOn <= reading.ReadOn) ?? inOrder[0];
                distances[id] = fitting.EngineDistanceAt(reading.Distance);
            }
        }

        return distances;
    }

    private static Distance? FirstCheckDue(EngineSpecification specification)
    {
        var interval = specification.ServiceItems.FirstOrDefault(i => i.Kind == ServiceItemKind.ValveClearanceCheck)?.Interval;
        return interval?.First ?? interval?.Every;
    }
}
