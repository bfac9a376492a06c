using Microsoft.EntityFrameworkCore;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Records;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Records;

/// <summary>What is due next and what is expected of the valves, from the rows that the sign-off has just had written.</summary>
internal static class RecordedAhead
{
    /// <param name="leaving">The odometer as the motorcycle leaves.</param>
    /// <param name="outside">Valves that the visit left outside their limits, by name.</param>
    public static async Task<IReadOnlyList<RecordedDue>> Due(
        WorkshopDbContext db, OpenCard open, OdometerReading leaving, IReadOnlyList<string> outside, CancellationToken ct)
    {
        var checks = open.Specification.ServiceItems.Where(i => i.Kind == ServiceItemKind.ValveClearanceCheck).Select(i => i.Code).ToHashSet(StringComparer.Ordinal);
        var due = await db.DueItems.AsNoTracking().Where(d => d.MotorcycleId == open.Card.MotorcycleId)
            .OrderBy(d => d.ExpectedOn).ThenBy(d => d.Name).ToListAsync(ct);
        var names = due.ToDictionary(d => d.ServiceItemCode, d => d.Name, StringComparer.Ordinal);
        return [.. due.Select(d => new RecordedDue(
            d.Name, d.DueAt, d.DueOn, d.ByForecast,
            RecordWords.Due(
                new DueAhead(
                    d.DueAt, d.DueOn, d.RateBasis is null ? null : d.ExpectedOn, d.ByForecast, d.IncludedIn is { } code ? names.GetValueOrDefault(code) : null)
                {
                    LeftOutside = checks.Contains(d.ServiceItemCode) ? outside : [],
                },
                leaving.Distance, leaving.ReadOn, leaving.Unit)))];
    }

    /// <param name="leaving">The odometer as the motorcycle leaves.</param>
    public static async Task<IReadOnlyList<RecordedForecast>> Forecasts(
        WorkshopDbContext db, OpenCard open, OdometerReading leaving, CancellationToken ct)
    {
        var rows = await db.ClearanceForecasts.AsNoTracking().Where(f => f.EngineId == open.Card.EngineId).ToListAsync(ct);
        var fitting = await db.EngineFittings.AsNoTracking()
            .Where(f => f.EngineId == open.Card.EngineId && f.MotorcycleId == open.Card.MotorcycleId)
            .OrderByDescending(f => f.FittedOn).FirstAsync(ct);
        return ValveForecastWords.Say(
            [.. rows.Select(r => ValveOutlookAhead.Of(r, fitting.MotorcycleDistanceAt))], leaving.Distance, leaving.Unit, open.Specification.Shims is not null);
    }
}
