using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;

namespace Workshop.Web.Features.Shims;

/// <summary>What the valves that come to be measured until some day are foretold to want.</summary>
internal sealed record StockingOutlook(IReadOnlyList<ValveOutlook> Valves, int Motorcycles, int WithoutForecast, int WithoutShim)
{
    /// <summary>However well a clearance is known, no size is wanted more sharply than this, mm (our own choice).</summary>
    private const double LeastDeviationMm = 0.001;

    /// <summary>A motorcycle that comes, when, and how surely.</summary>
    private sealed record Coming(Guid Motorcycle, Guid Engine, LocalDate On, double Surely);

    public static async Task<StockingOutlook> Read(
        WorkshopDbContext db, string partCode, WorkshopTime time, LocalDate today, LocalDate until, double share, CancellationToken ct)
    {
        var coming = await WhoComes(db, time, today, until, share, ct);
        var engines = (await EngineDrift.Load(db, [.. coming.Select(c => c.Engine)], ct))
            .Where(e => e.Engine.Specification.Shims?.PartCode == partCode).ToDictionary(e => e.Engine.EngineId);
        var fits = await CurrentFits.Read(db, [.. engines.Values.Select(e => e.EngineModelId).Distinct()], ct);
        var history = await ShimHistories.Read(db, [.. engines.Keys], ct);
        var (valves, withoutForecast, withoutShim, motorcycles) = (new List<ValveOutlook>(), 0, 0, 0);
        foreach (var visit in coming.Where(c => engines.ContainsKey(c.Engine)).OrderBy(c => c.Motorcycle))
        {
            motorcycles++;
            var engine = engines[visit.Engine];
            var forecast = fits.GetValueOrDefault(engine.EngineModelId)?.Fit is { } fit ? EngineForecast.Of(engine.Engine, fit) : null;
            var shims = history[visit.Engine];
            foreach (var valve in engine.Engine.Specification.Valves)
            {
                // Two lobes act through one shim: the one that is the nearer to leaving its limits decides.
                var lobes = Enumerable.Range(1, valve.Lobes).Select(lobe => Foretold(engine, forecast, visit, new LobeKey(valve.Key, lobe), shims))
                    .OfType<ValveOutlook>().ToList();
                if (lobes.Count == 0)
                {
                    withoutForecast++;
                }
                else if (!shims.ContainsKey(valve.Key))
                {
                    withoutShim++;
                }
                else
                {
                    valves.Add(lobes.MaxBy(l => l.NeedsShim)!);
                }
            }
        }

        return new StockingOutlook(valves, motorcycles, withoutForecast, withoutShim);
    }

    /// <summary>By the drift model, at the distance that the odometer's rate gives for the day of the visit.</summary>
    private static ValveOutlook? Foretold(
        EngineDrift engine, EngineForecast? forecast, Coming visit, LobeKey lobe, IReadOnlyDictionary<ValveKey, ShimThickness> shims)
    {
        if (engine.Fitting is not { } fitting || engine.ExpectedOn(visit.On) is not { } expected)
        {
            return null;
        }

        var then = fitting.EngineDistanceAt(expected);
        if (forecast?.ClearanceAt(lobe, then) is not { } clearance || forecast.OutsideBy(lobe, then) is not { } outside)
        {
            return null;
        }

        return new ValveOutlook(
            visit.Motorcycle, lobe.Valve, shims.GetValueOrDefault(lobe.Valve), engine.Engine.LimitsOf(lobe), clearance.MeanMm,
            Math.Max(clearance.DeviationMm, LeastDeviationMm), outside, visit.Surely, forecast.Find(lobe)!.DriftMm,
            engine.Engine.Specification.Shims!);
    }

    /// <summary>Motorcycles with a valve clearance check booked, or due; overdue ones as if today.</summary>
    private static async Task<IReadOnlyList<Coming>> WhoComes(
        WorkshopDbContext db, WorkshopTime time, LocalDate today, LocalDate until, double share, CancellationToken ct)
    {
        var checks = await CheckCodes(db, ct);
        var end = time.WholeDay(until).End;
        var booked = (await (
            from card in db.JobCards.AsNoTracking()
            join item in db.JobCardItems on card.Number equals item.JobCardNumber
            where (card.State == JobCardState.Booked || card.State == JobCardState.CheckedIn) && card.StartsAt < end && checks.Contains(item.ServiceItemCode)
            select new { card.MotorcycleId, card.StartsAt }).ToListAsync(ct))
            .GroupBy(c => c.MotorcycleId).ToDictionary(g => g.Key, g => time.DayOf(g.Min(c => c.StartsAt)));
        var due = (await db.DueItems.AsNoTracking().Where(d => d.ExpectedOn <= until && checks.Contains(d.ServiceItemCode))
            .Select(d => new { d.MotorcycleId, d.ExpectedOn }).ToListAsync(ct))
            .GroupBy(d => d.MotorcycleId).ToDictionary(g => g.Key, g => LocalDate.Max(g.Min(d => d.ExpectedOn), today));
        var motorcycles = booked.Keys.Union(due.Keys).ToList();
        var fitted = await (
            from fitting in db.EngineFittings.AsNoTracking()
            join motorcycle in db.Motorcycles on fitting.MotorcycleId equals motorcycle.Id
            where fitting.RemovedOn == null && !motorcycle.Retired && motorcycles.Contains(motorcycle.Id)
            select new { fitting.MotorcycleId, fitting.EngineId }).ToListAsync(ct);
        return [.. fitted.Select(f => booked.TryGetValue(f.MotorcycleId, out var day)
            ? new Coming(f.MotorcycleId, f.EngineId, LocalDate.Max(day, today), 1)
            : new Coming(f.MotorcycleId, f.EngineId, due[f.MotorcycleId], share))];
    }

    private static async Task<IReadOnlyList<string>> CheckCodes(WorkshopDbContext db, CancellationToken ct) =>
        [.. (await db.EngineModelVersions.AsNoTracking().ToListAsync(ct)).SelectMany(v => v.Specification.ServiceItems)
            .Where(i => i.Kind == ServiceItemKind.ValveClearanceCheck).Select(i => i.Code).Distinct()];
}
