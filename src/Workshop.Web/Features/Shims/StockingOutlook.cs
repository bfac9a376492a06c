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
    /// <summary>Standard deviation of the present level, mm: a reading by blades in steps of 0.01 to 0.05. Common practice, no source.</summary>
    private const double LevelMm = 0.010;

    private const double KmPerUnit = 10_000;

    /// <summary>A motorcycle that comes, when, and how surely.</summary>
    private sealed record Coming(Guid Motorcycle, Guid Engine, LocalDate On, double Surely);

    public static async Task<StockingOutlook> Read(
        WorkshopDbContext db, string partCode, WorkshopTime time, LocalDate today, LocalDate until, double share, CancellationToken ct)
    {
        var coming = await WhoComes(db, time, today, until, share, ct);
        var engines = (await EngineDrift.Load(db, [.. coming.Select(c => c.Engine)], ct))
            .Where(e => e.Specification.Shims?.PartCode == partCode).ToDictionary(e => e.EngineId);
        var ids = engines.Keys.ToList();
        var forecasts = (await db.ClearanceForecasts.AsNoTracking().Where(f => ids.Contains(f.EngineId)).ToListAsync(ct)).ToLookup(f => f.EngineId);
        var (valves, withoutForecast, withoutShim, motorcycles) = (new List<ValveOutlook>(), 0, 0, 0);
        foreach (var visit in coming.Where(c => engines.ContainsKey(c.Engine)).OrderBy(c => c.Motorcycle))
        {
            motorcycles++;
            var engine = engines[visit.Engine];
            var shims = MeasuredValves.ShimsBefore([.. engine.History.Shims], [.. engine.History.Events]);
            foreach (var valve in engine.Specification.Valves)
            {
                // Two lobes act through one shim: the one that is the nearer to leaving its limits decides.
                var lobes = forecasts[visit.Engine].Where(f => f.Valve == valve.Key).Select(f => Foretold(engine, visit, f, shims)).OfType<ValveOutlook>().ToList();
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

    /// <summary>By the straight line of the forecast, at the distance that the odometer's rate gives for the day of the visit.</summary>
    private static ValveOutlook? Foretold(
        EngineDrift engine, Coming visit, ClearanceForecast row, IReadOnlyDictionary<ValveKey, ShimThickness> shims)
    {
        if (row.PresentMm is not { } present || row.DriftMmPer10000Km is not { } drift || engine.Fitting is not { } fitting || engine.Track is not { } track)
        {
            return null;
        }

        var lobe = new LobeKey(row.Valve, row.Lobe);
        var read = engine.History.Readings.Where(r => r.Valve == row.Valve && r.Lobe == row.Lobe)
            .Select(r => engine.History.DistanceAt.TryGetValue(r.OdometerReadingId, out var at) ? at : (Distance?)null).Max();
        if (read is not { } last)
        {
            return null;
        }

        var days = Math.Max(Period.DaysBetween(track.Last.On, visit.On), 0);
        var then = fitting.EngineDistanceAt(track.Last.Distance + Distance.FromKilometres(decimal.Round(RidingRate.Of(track).PerDay.Kilometres * days, 3)));
        var units = (double)(then - last).Kilometres / KmPerUnit;
        var limits = ReadingRules.LimitsOf(engine.Specification, lobe);
        var clearance = (double)present + ((double)drift * units);
        var spread = Math.Sqrt((LevelMm * LevelMm) + Math.Pow((double)(row.DriftStandardError ?? 0) * units, 2));
        return new ValveOutlook(
            visit.Motorcycle, row.Valve, shims.GetValueOrDefault(row.Valve), limits, clearance, spread,
            ValveOutlook.Outside(limits, clearance, spread), visit.Surely, (double)drift, engine.Specification.Shims!);
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
