using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Records;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Records;

/// <summary>Clearances and shims of a visit for its record, and with what they were measured.</summary>
internal sealed record RecordedValves(IReadOnlyList<RecordedLobe> Lobes, IReadOnlyList<RecordedShim> Shims, IReadOnlyList<string> Measuring)
{
    public static async Task<RecordedValves> Read(WorkshopDbContext db, SignOffFacts facts, WorkshopTime time, CancellationToken ct)
    {
        var (readings, shims) = (facts.Readings, facts.Shims);
        if (readings.Count == 0 && shims.Count == 0)
        {
            return new RecordedValves([], [], []);
        }

        return new RecordedValves(
            RecordedLobes.Of(facts.Specification, readings, shims, facts.Events),
            RecordedLobes.Shims(shims, shims.Count == 0 ? [] : await FittedOf(db, facts.Number, ct)),
            await MeasuredWith(
                db, facts.Specification.Cold, readings, [.. shims.Select(s => s.MicrometerId).OfType<Guid>()],
                readings.Select(r => r.MeasuredAt).Concat(shims.Select(s => s.MeasuredAt)).Max(), time, ct));
    }

    /// <summary>By the ledger: the last shim that went into each valve.</summary>
    private static async Task<IReadOnlyList<FittedShim>> FittedOf(WorkshopDbContext db, int number, CancellationToken ct)
    {
        var moved = await db.StockMovements.AsNoTracking()
            .Where(m => m.JobCardNumber == number && m.Valve != null && (m.Kind == MovementKind.CameOut || m.Kind == MovementKind.Issued))
            .Select(m => new { m.Id, m.MovedAt, m.Valve, m.Kind, m.ShimId, m.Condition }).ToListAsync(ct);
        return [.. moved.GroupBy(m => m.Valve!.Value).Select(of =>
        {
            var fitted = of.Where(m => m.Kind == MovementKind.Issued).OrderBy(m => m.MovedAt).ThenBy(m => m.Id).LastOrDefault();
            var first = of.Where(m => m.Kind == MovementKind.CameOut).OrderBy(m => m.MovedAt).ThenBy(m => m.Id).FirstOrDefault();
            return fitted is null ? null : new FittedShim(of.Key, fitted.Condition, first is not null && first.ShimId == fitted.ShimId);
        }).OfType<FittedShim>()];
    }

    private static async Task<IReadOnlyList<string>> MeasuredWith(
        WorkshopDbContext db, ColdCondition cold, IReadOnlyList<ClearanceReading> readings, IReadOnlyCollection<Guid> micrometers, Instant measured, WorkshopTime time,
        CancellationToken ct)
    {
        var used = readings.Select(r => r.InstrumentId).OfType<Guid>().Concat(micrometers).ToHashSet();
        var instruments = await InstrumentsThen.Read(db, used, ct);
        var day = time.DayOf(measured);
        var sentences = instruments.InOrder.Select(i => $"{i.Name}: {instruments.StandingOf(i.Id, day)}.").Distinct(StringComparer.Ordinal).ToList();
        var temperatures = readings.Select(r => r.HeadTemperature?.Celsius).OfType<decimal>().ToList();
        if (temperatures.Count > 0)
        {
            var (low, high) = (temperatures.Min(), temperatures.Max());
            var warm = low == high ? $"{Degrees(low)} °C" : $"{Degrees(low)} to {Degrees(high)} °C";
            sentences.Add($"Cylinder head at {warm} by {readings.FirstOrDefault(r => r.TemperatureMethod is not null)?.TemperatureMethod ?? cold.Method}; clearances hold for {cold.Lowest} to {cold.Highest}.");
        }

        return sentences;
    }

    private static string Degrees(decimal celsius) => celsius.ToString("0.#", CultureInfo.InvariantCulture);
}
