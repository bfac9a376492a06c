using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Imports;

/// <summary>What the books hold about the motorcycles of a file of worksheets, with what was measured of them.</summary>
internal sealed class WorksheetBooks
{
    private readonly NamedMotorcycles motorcycles;
    private readonly HashSet<(Guid Engine, LobeKey Lobe, Stage Stage, LocalDate On)> read;

    private WorksheetBooks(NamedMotorcycles motorcycles, HashSet<(Guid Engine, LobeKey Lobe, Stage Stage, LocalDate On)> read)
    {
        this.motorcycles = motorcycles;
        this.read = read;
    }

    public WorkshopTime Time => motorcycles.Time;

    public Instant Now => motorcycles.Now;

    public MotorcycleInBooks? Find(string registration) => motorcycles.Find(registration);

    /// <summary>The current version of the engine's model.</summary>
    public EngineSpecification SpecificationOf(Guid engine) => motorcycles.SpecificationOf(engine);

    /// <summary>Whether a lobe was read at that stage on that day already, on a card or from a worksheet.</summary>
    public bool HasReading(Guid engine, LobeKey lobe, Stage stage, LocalDate on) => read.Contains((engine, lobe, stage, on));

    public static async Task<WorksheetBooks> Read(
        WorkshopDbContext db, IReadOnlyList<WorksheetRow> rows, Instant now, CancellationToken ct)
    {
        var named = await NamedMotorcycles.Read(db, [.. rows.Select(r => r.Motorcycle)], byVin: false, now, ct);
        return new WorksheetBooks(named, await ReadBefore(db, [.. named.Engines], named.Time, ct));
    }

    private static async Task<HashSet<(Guid, LobeKey, Stage, LocalDate)>> ReadBefore(
        WorkshopDbContext db, List<Guid> engines, WorkshopTime time, CancellationToken ct)
    {
        var readings = await db.ClearanceReadings.AsNoTracking().Where(r => engines.Contains(r.EngineId))
            .Select(r => new { r.EngineId, r.Valve, r.Lobe, r.Stage, r.MeasuredAt }).ToListAsync(ct);
        return [.. readings.Select(r => (r.EngineId, new LobeKey(r.Valve, r.Lobe), r.Stage, time.DayOf(r.MeasuredAt)))];
    }
}
