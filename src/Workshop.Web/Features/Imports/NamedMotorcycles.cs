using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
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
/// What the books hold about the motorcycles that a file names, read once with one query a table. Holds those motorcycles until
/// the transaction ends, so that what is judged here still stands when it is written.
/// </summary>
internal sealed class NamedMotorcycles
{
    private readonly Dictionary<string, MotorcycleInBooks> byName;
    private readonly Dictionary<Guid, EngineSpecification> specifications;

    private NamedMotorcycles(
        WorkshopTime time, Instant now, Dictionary<string, MotorcycleInBooks> byName, Dictionary<Guid, EngineSpecification> specifications)
    {
        Time = time;
        Now = now;
        this.byName = byName;
        this.specifications = specifications;
    }

    public WorkshopTime Time { get; }

    public Instant Now { get; }

    public IEnumerable<MotorcycleInBooks> All => byName.Values.Distinct();

    /// <summary>Every engine that one of them had.</summary>
    public IReadOnlyList<Guid> Engines => [.. specifications.Keys];

    /// <summary>By its registration, or by its VIN where the file may name it so.</summary>
    public MotorcycleInBooks? Find(string name) => byName.GetValueOrDefault(name);

    /// <summary>The current version of the engine's model.</summary>
    public EngineSpecification SpecificationOf(Guid engine) => specifications[engine];

    public static async Task<NamedMotorcycles> Read(
        WorkshopDbContext db, IReadOnlyCollection<string> names, bool byVin, Instant now, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var wanted = names.Distinct(StringComparer.Ordinal).ToList();
        var vins = byVin
            ? wanted.Select(n => (Name: n, Vin: MotorcycleFields.VinAsStored(n))).Where(n => n.Vin is not null).ToLookup(n => n.Vin!, n => n.Name)
            : Array.Empty<string>().ToLookup(n => n);
        var numbers = vins.Select(v => v.Key).ToList();
        var named = await db.Motorcycles.AsNoTracking()
            .Where(m => wanted.Contains(m.Registration) || (m.Vin != null && numbers.Contains(m.Vin))).ToListAsync(ct);
        var ids = named.Select(m => m.Id).ToArray();
        await MotorcycleLock.Take(db, ids, ct);

        var fittings = await db.EngineFittings.AsNoTracking().Where(f => ids.Contains(f.MotorcycleId))
            .OrderBy(f => f.FittedOn).ToListAsync(ct);
        var ofMotorcycle = fittings.ToLookup(f => f.MotorcycleId);
        var instruments = (await db.Odometers.AsNoTracking().Where(o => ids.Contains(o.MotorcycleId))
            .OrderBy(o => o.FittedOn).ToListAsync(ct)).ToLookup(o => o.MotorcycleId);
        var standing = (await db.OdometerReadings.AsNoTracking()
            .Where(r => ids.Contains(r.MotorcycleId) && !db.OdometerReadings.Any(later => later.SupersedesId == r.Id))
            .ToListAsync(ct)).ToLookup(r => r.MotorcycleId);
        var today = time.DayOf(now);
        var books = named.Select(m => new MotorcycleInBooks(
            m, [.. ofMotorcycle[m.Id]], new OdometerEntry.Known(today, [.. instruments[m.Id]], [.. standing[m.Id]]))).ToList();
        return new NamedMotorcycles(
            time, now, ByName(books, vins), await Specifications(db, [.. fittings.Select(f => f.EngineId).Distinct()], ct));
    }

    /// <summary>A registration goes before a VIN; a VIN that two have names neither.</summary>
    private static Dictionary<string, MotorcycleInBooks> ByName(IReadOnlyList<MotorcycleInBooks> books, ILookup<string, string> vins)
    {
        var names = books.ToDictionary(b => b.Motorcycle.Registration, StringComparer.Ordinal);
        foreach (var ofVin in books.Where(b => b.Motorcycle.Vin is not null).GroupBy(b => b.Motorcycle.Vin!).Where(g => g.Count() == 1))
        {
            foreach (var name in vins[ofVin.Key])
            {
                names.TryAdd(name, ofVin.Single());
            }
        }

        return names;
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
}
