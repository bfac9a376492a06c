using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Web.Data;
using Workshop.Web.Features.Intervals;

namespace Workshop.Web.Features.Drift;

/// <summary>What was known before a visit.</summary>
/// <param name="Card">Whose rows are left away.</param>
/// <param name="Until">Rows from here on are left away too.</param>
internal sealed record BeforeVisit(int Card, Instant Until);

/// <summary>Of one engine, all that decides how its valves drift.</summary>
/// <param name="EngineModelId">Its engine model.</param>
/// <param name="Engine">Its readings as the drift model takes them, under the current version of its engine model.</param>
/// <param name="Fitting">The motorcycle that it is in now; absent where it is in none.</param>
/// <param name="Track">What that motorcycle had done by date.</param>
/// <param name="Rate">How far it is ridden in a day; absent without a track.</param>
internal sealed record EngineDrift(
    Guid EngineModelId, DriftEngine Engine, EngineFitting? Fitting, OdometerTrack? Track, RidingRate? Rate)
{
    /// <summary>What the engine had done at each odometer reading of the motorcycles that it was in, corrected ones by any of their ids.</summary>
    public IReadOnlyDictionary<Guid, Distance> Distances { get; init; } = new Dictionary<Guid, Distance>();

    /// <summary>Where the motorcycle's rate, and with it every date here, comes from.</summary>
    public RateBasis? RateBasis => Rate?.Basis;

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

        var day = NextDue.Reach(Fitting.MotorcycleDistanceAt(distance), Track, Rate!).Expected;
        return day < Track.Last.On.PlusDays(NextDue.HorizonDays) ? day : null;
    }

    /// <summary>What the motorcycle is expected to have done on a day, by its rate; not before its last reading.</summary>
    public Distance? ExpectedOn(LocalDate day) => Track is null ? null : Rate!.DistanceOn(day, Track.Last);

    /// <summary>Reads the engines asked for, in order of id, with one query a table however many they are.</summary>
    /// <param name="db">Where from.</param>
    /// <param name="engines">Which.</param>
    /// <param name="ct">Ends it early.</param>
    /// <param name="before">Only what was known before a visit; all where absent.</param>
    public static async Task<IReadOnlyList<EngineDrift>> Load(
        WorkshopDbContext db, IReadOnlyCollection<Guid> engines, CancellationToken ct, BeforeVisit? before = null)
    {
        var (card, until) = (before?.Card, before?.Until ?? Instant.MaxValue);
        var specifications = await Specifications(db, engines, ct);
        var fittings = (await db.EngineFittings.AsNoTracking().Where(f => engines.Contains(f.EngineId)).ToListAsync(ct))
            .ToLookup(f => f.EngineId);
        var motorcycles = fittings.SelectMany(f => f).Select(f => f.MotorcycleId).Distinct().ToList();
        var odometer = await db.OdometerReadings.AsNoTracking().Where(r => motorcycles.Contains(r.MotorcycleId)).ToListAsync(ct);
        var instruments = (await db.Odometers.AsNoTracking().Where(o => motorcycles.Contains(o.MotorcycleId)).ToListAsync(ct))
            .ToLookup(o => o.MotorcycleId);
        var readOn = StandingByAnyId(odometer).ToLookup(r => r.Standing.MotorcycleId);
        var readings = (await db.ClearanceReadings.AsNoTracking()
                .Where(r => engines.Contains(r.EngineId) && (card == null || (r.JobCardNumber != card && r.MeasuredAt < until))).ToListAsync(ct))
            .ToLookup(r => r.EngineId);
        var shims = (await db.ShimObservations.AsNoTracking()
                .Where(s => engines.Contains(s.EngineId) && (card == null || (s.JobCardNumber != card && s.MeasuredAt < until))).ToListAsync(ct))
            .ToLookup(s => s.EngineId);
        var events = (await db.ValveEvents.AsNoTracking()
                .Where(e => engines.Contains(e.EngineId) && (card == null || (e.JobCardNumber != card && e.HappenedAt < until))).ToListAsync(ct))
            .ToLookup(e => e.EngineId);
        var parts = (await db.PartChanges.AsNoTracking()
                .Where(c => engines.Contains(c.EngineId) && (card == null || (c.JobCardNumber != card && c.EnteredAt < until))).ToListAsync(ct))
            .ToLookup(c => c.EngineId);

        var leftOut = await LeftOut(db, engines, ct);
        var fleet = await FleetRidings.Current(db, ct);
        var aims = await Aims(db, [.. readings.SelectMany(r => r).Select(r => r.JobCardNumber)
            .Concat(shims.SelectMany(s => s).Select(s => s.JobCardNumber))
            .Concat(events.SelectMany(e => e).Select(e => e.JobCardNumber)).OfType<int>().Distinct()], ct);

        return [.. engines.Order().Where(specifications.ContainsKey).Select(id =>
        {
            var (model, specification) = specifications[id];
            var distances = EngineDistances([.. fittings[id]], readOn);
            var history = new EngineHistory([.. readings[id]], [.. shims[id]], [.. events[id]], [.. parts[id]], distances)
            {
                FirstCheckDue = FirstCheckDue(specification),
                LeftOut = leftOut.GetValueOrDefault(id, LeftOutVisits.None),
                Aims = aims,
            };
            var fitting = fittings[id].SingleOrDefault(f => f.RemovedOn is null);
            var track = fitting is null ? null : TrackOf(instruments[fitting.MotorcycleId], readOn[fitting.MotorcycleId]);
            var doneNow = track is null ? (Distance?)null : fitting!.EngineDistanceAt(track.Last.Distance);
            return new EngineDrift(
                model, DriftEngine.Of(id, specification, history, doneNow), fitting, track, track is null ? null : RidingRate.Of(track, fleet))
                { Distances = distances };
        })];
    }

    private static OdometerTrack? TrackOf(
        IEnumerable<Odometer> instruments, IEnumerable<(Guid Id, OdometerReading Standing)> readings) =>
        instruments.MinBy(o => o.FittedOn) is { } first
            ? OdometerTrack.Of(
                new OdometerPoint(first.FittedOn, first.Offset),
                StandingReadings.NotOverruled([.. readings.Where(r => r.Id == r.Standing.Id).Select(r => r.Standing)])
                    .Select(r => new OdometerPoint(r.ReadOn, r.Distance)))
            : null;

    private static async Task<IReadOnlyDictionary<Guid, (Guid ModelId, EngineSpecification Specification)>> Specifications(
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
        return models.ToDictionary(m => m.Id, m => (m.EngineModelId, versions[m.EngineModelId]));
    }

    private static async Task<IReadOnlyDictionary<Guid, LeftOutVisits>> LeftOut(
        WorkshopDbContext db, IReadOnlyCollection<Guid> engines, CancellationToken ct)
    {
        var decided = await db.LeftOutVisits.AsNoTracking().Where(v => engines.Contains(v.EngineId)).ToListAsync(ct);
        return decided.GroupBy(v => (v.EngineId, v.JobCardNumber, Reading: v.JobCardNumber is null ? v.OdometerReadingId : default))
            .Select(of => of.OrderBy(v => v.DecidedAt).ThenBy(v => v.Id).Last())
            .Where(v => v.LeftOut)
            .GroupBy(v => v.EngineId)
            .ToDictionary(of => of.Key, of => new LeftOutVisits(
                of.Select(v => v.JobCardNumber).OfType<int>().ToHashSet(),
                of.Where(v => v.JobCardNumber is null).Select(v => v.OdometerReadingId).ToHashSet()));
    }

    /// <summary>What was aimed at on cards whose version of the engine model is no longer the current one.</summary>
    private static async Task<IReadOnlyDictionary<(int, LobeKey), decimal>> Aims(
        WorkshopDbContext db, IReadOnlyCollection<int> cards, CancellationToken ct)
    {
        var earlier = await (
            from card in db.JobCards.AsNoTracking()
            join version in db.EngineModelVersions on card.EngineModelVersionId equals version.Id
            join model in db.EngineModels on version.EngineModelId equals model.Id
            where cards.Contains(card.Number) && version.Version != model.CurrentVersion
            select new { card.Number, version.Specification }).ToListAsync(ct);
        return earlier
            .SelectMany(e => ReadingRules.LobesOf(e.Specification).Select(lobe =>
                (Key: (e.Number, lobe), Aim: ReadingRules.LimitsOf(e.Specification, lobe).SetTo.Millimetres)))
            .ToDictionary(a => a.Key, a => a.Aim);
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
