using Microsoft.EntityFrameworkCore;
using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;

namespace Workshop.Web.Features.CamTiming;

/// <summary>The lives of the chains of some engines, under the current version of their engine model.</summary>
internal sealed record ChainsOfEngine(EngineDrift Engine, EngineSpecification Specification, TimingRows Rows)
{
    /// <summary>Reads the engines asked for, with one query a table however many they are.</summary>
    public static async Task<IReadOnlyList<ChainsOfEngine>> Load(
        WorkshopDbContext db, IReadOnlyCollection<Guid> engines, CancellationToken ct)
    {
        var checks = (await db.CamTimingChecks.AsNoTracking().Where(c => engines.Contains(c.EngineId)).ToListAsync(ct)).ToLookup(c => c.EngineId);
        var chains = (await db.ChainReadings.AsNoTracking().Where(c => engines.Contains(c.EngineId)).ToListAsync(ct)).ToLookup(c => c.EngineId);
        var changes = (await db.ChainChanges.AsNoTracking().Where(c => engines.Contains(c.EngineId)).ToListAsync(ct)).ToLookup(c => c.EngineId);
        var drifts = await EngineDrift.Load(db, engines, ct);
        return [.. drifts.Select(d => new ChainsOfEngine(
            d, d.Engine.Specification, new TimingRows([.. checks[d.Engine.EngineId]], [.. chains[d.Engine.EngineId]], [.. changes[d.Engine.EngineId]])))];
    }

    /// <summary>Chains of a drive in this engine by one measure, the present one last; empty where nothing was read.</summary>
    public IReadOnlyList<ChainLife> Lives(CamDrive drive, WearMeasure measure) => ChainHistory.Of(
        Engine.Engine.EngineId, drive, measure, Rows.Chains, Rows.Checks, Rows.Changes, Engine.Distances);

    /// <summary>The limit of a measure: the tensioner's, or the smallest deviation that is permitted; nothing where none is stated.</summary>
    public static double? LimitOf(CamDrive drive, WearMeasure measure) => measure == WearMeasure.TensionerExtension
        ? (double?)drive.Tensioner?.LimitMm
        : drive.Stages.Any(s => s.Kind != DriveKind.Gear) ? (double)drive.Lobes.Min(l => l.PermittedDeviation.Degrees) : null;

    /// <summary>Engines of an engine model of which a chain was ever read.</summary>
    public static async Task<IReadOnlyList<Guid>> EnginesRead(WorkshopDbContext db, Guid engineModelId, CancellationToken ct) => await db.Engines.AsNoTracking()
        .Where(e => e.EngineModelId == engineModelId
            && (db.ChainReadings.Any(r => r.EngineId == e.Id) || db.CamTimingChecks.Any(c => c.EngineId == e.Id)))
        .Select(e => e.Id).ToListAsync(ct);
}
