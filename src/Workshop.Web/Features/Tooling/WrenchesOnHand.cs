using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Tooling;

/// <summary>Reads torque wrenches with the cycles that ticks count since their last calibration, and what goes between.</summary>
internal static class WrenchesOnHand
{
    /// <summary>All of the workshop's, withdrawn ones too.</summary>
    public static async Task<IReadOnlyList<WrenchOnHand>> Read(WorkshopDbContext db, WorkshopTime time, CancellationToken ct)
    {
        var wrenches = await db.Instruments.AsNoTracking().Where(i => i.Kind == InstrumentKind.TorqueWrench).ToListAsync(ct);
        var cycles = await Cycles(db, wrenches.Select(w => w.Id), time, ct);
        return [.. wrenches.Select(w => new WrenchOnHand(w, cycles.GetValueOrDefault(w.Id)))];
    }

    /// <summary>One of them by its id; another instrument counts as a wrench of no cycles, and is refused for what it is.</summary>
    public static async Task<WrenchOnHand?> Find(WorkshopDbContext db, Guid id, WorkshopTime time, CancellationToken ct) =>
        await db.Instruments.AsNoTracking().SingleOrDefaultAsync(i => i.Id == id, ct) is { } wrench
            ? new WrenchOnHand(wrench, (await Cycles(db, [id], time, ct)).GetValueOrDefault(id))
            : null;

    public static Task<List<WrenchAdapter>> Adapters(WorkshopDbContext db, CancellationToken ct) =>
        db.WrenchAdapters.AsNoTracking().OrderBy(a => a.Name).ToListAsync(ct);

    /// <summary>
    /// Cycles since the day of the last calibration, that day with them, by instrument; all that were ever counted where none is
    /// on record. Those that no tick names are left out.
    /// </summary>
    public static async Task<Dictionary<Guid, int>> Cycles(
        WorkshopDbContext db, IEnumerable<Guid> instruments, WorkshopTime time, CancellationToken ct)
    {
        var (ids, zone) = (instruments.ToArray(), time.Zone.Id);
        var rows = await db.Database.SqlQuery<CycleCount>(
            $"""
             select tick.wrench_id as id, sum(tick.cycles)::int as cycles
             from fastener_ticks tick join instruments i on i.id = tick.wrench_id
             where tick.wrench_id = any({ids}) and tick.tightened
               and (i.calibrated_on is null or tick.ticked_at >= i.calibrated_on::timestamp at time zone {zone})
             group by tick.wrench_id
             """).ToListAsync(ct);
        return rows.ToDictionary(r => r.Id, r => r.Cycles);
    }

    internal sealed record CycleCount(Guid Id, int Cycles);
}
