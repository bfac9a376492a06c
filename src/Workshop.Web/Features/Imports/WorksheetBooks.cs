using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Motorcycles;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Motorcycles;

namespace Workshop.Web.Features.Imports;

/// <summary>One motorcycle that a file names, with all that judges a line about it.</summary>
/// <param name="Fittings">The engines that it had.</param>
internal sealed record MotorcycleInBooks(
    Motorcycle Motorcycle, IReadOnlyList<EngineFitting> Fittings, OdometerEntry.Known Odometer)
{
    /// <summary>The engine that was in it on a day.</summary>
    public EngineFitting? FittedOn(LocalDate day) =>
        Fittings.LastOrDefault(f => f.FittedOn <= day && (f.RemovedOn is null || day < f.RemovedOn));
}

/// <summary>
/// What the books hold about the motorcycles of a file, read once with one query a table. Holds those motorcycles until the
/// transaction ends, so that what is judged here still stands when it is written.
/// </summary>
internal sealed class WorksheetBooks
{
    private readonly Dictionary<string, MotorcycleInBooks> motorcycles;
    private readonly Dictionary<Guid, EngineSpecification> specifications;
    private readonly HashSet<(Guid Engine, LobeKey Lobe, Stage Stage, LocalDate On)> read;

    private WorksheetBooks(
        WorkshopTime time,
        Instant now,
        Dictionary<string, MotorcycleInBooks> motorcycles,
        Dictionary<Guid, EngineSpecification> specifications,
        HashSet<(Guid Engine, LobeKey Lobe, Stage Stage, LocalDate On)> read)
    {
        Time = time;
        Now = now;
        this.motorcycles = motorcycles;
        this.specifications = specifications;
        this.read = read;
    }

    public WorkshopTime Time { get; }

    public Instant Now { get; }

    public MotorcycleInBooks? Find(string registration) => motorcycles.GetValueOrDefault(registration);

    /// <summary>The current version of the engine's model.</summary>
    public EngineSpecification SpecificationOf(Guid engine) => specifications[engine];

    /// <summary>Whether a lobe was read at that stage on that day already, on a card or from a worksheet.</summary>
    public bool HasReading(Guid engine, LobeKey lobe, Stage stage, LocalDate on) => read.Contains((engine, lobe, stage, on));

    public static async Task<WorksheetBooks> Read(
        WorkshopDbContext db, IReadOnlyList<WorksheetRow> rows, Instant now, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var registrations = rows.Select(r => r.Motorcycle).Distinct().ToList();
        var named = await db.Motorcycles.AsNoTracking().Where(m => registrations.Contains(m.Registration)).ToListAsync(ct);
        var ids = named.Select(m => m.Id).ToArray();
        await MotorcycleLock.Take(db, ids, ct);

        var fittings = await db.EngineFittings.AsNoTracking().Where(f => ids.Contains(f.MotorcycleId))
            .OrderBy(f => f.FittedOn).ToListAsync(ct);
        var instruments = (await db.Odometers.AsNoTracking().Where(o => ids.Contains(o.MotorcycleId))
            .OrderBy(o => o.FittedOn).ToListAsync(ct)).ToLookup(o => o.MotorcycleId);
        var standing = (await db.OdometerReadings.AsNoTracking()
            .Where(r => ids.Contains(r.MotorcycleId) && !db.OdometerReadings.Any(later => later.SupersedesId == r.Id))
            .ToListAsync(ct)).ToLookup(r => r.MotorcycleId);
        var today = time.DayOf(now);
        return new WorksheetBooks(
            time,
            now,
            named.ToDictionary(m => m.Registration, m => new MotorcycleInBooks(
                m,
                [.. fittings.Where(f => f.MotorcycleId == m.Id)],
                new OdometerEntry.Known(today, [.. instruments[m.Id]], [.. standing[m.Id]]))),
            await Specifications(db, [.. fittings.Select(f => f.EngineId).Distinct()], ct),
            await ReadBefore(db, [.. fittings.Select(f => f.EngineId).Distinct()], time, ct));
    }

    private static async Task<Dictionary<Guid, EngineSpecification>> Specifications(
        WorkshopDbContext db, List<Guid> engines, CancellationToken ct)
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

    private static async Task<HashSet<(Guid, LobeKey, Stage, LocalDate)>> ReadBefore(
        WorkshopDbContext db, List<Guid> engines, WorkshopTime time, CancellationToken ct)
    {
        var readings = await db.ClearanceReadings.AsNoTracking().Where(r => engines.Contains(r.EngineId))
            .Select(r => new { r.EngineId, r.Valve, r.Lobe, r.Stage, r.MeasuredAt }).ToListAsync(ct);
        return [.. readings.Select(r => (r.EngineId, new LobeKey(r.Valve, r.Lobe), r.Stage, time.DayOf(r.MeasuredAt)))];
    }
}
