using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Stores;

namespace Workshop.Web.Features.Estimates;

/// <summary>The one place that says what labour and parts cost and sell for on a day.</summary>
internal static class TodaysPrices
{
    /// <summary>Who sees what a part costs the workshop.</summary>
    public static bool SeesCosts(Actor actor) => actor.Is(Roles.Manager);

    /// <summary>The prices of the workshop's today.</summary>
    /// <param name="codes">Parts that are asked about; those that the stores lack are left out.</param>
    /// <param name="standIns">Codes of the parts that stand in for others of <paramref name="codes"/>, whose price then is theirs.</param>
    public static async Task<PriceBook> Read(
        WorkshopDbContext db, IReadOnlyCollection<string> codes, IClock clock, CancellationToken ct, IReadOnlyDictionary<string, string>? standIns = null)
    {
        var profile = await db.WorkshopProfiles.AsNoTracking().SingleAsync(ct);
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var tax = TaxTable.On(today, await db.TaxRates.AsNoTracking().ToListAsync(ct));
        var usual = tax.Find(profile.TaxRateCode);
        var known = await PartsByCode.Read(db, [.. codes.Union(standIns?.Values ?? [])], ct);
        var parts = codes.Distinct().Select(c => (Code: c, Part: known.GetValueOrDefault(standIns?.GetValueOrDefault(c) ?? c)))
            .Where(p => p.Part is not null).ToDictionary(p => p.Code, p => p.Part!, StringComparer.Ordinal);
        var costs = await Costs(db, [.. parts.Values.Select(p => p.Id).Distinct()], ct);
        return new PriceBook(profile.Currency, profile.LabourNetPerHour, usual, tax, parts.ToDictionary(
            p => p.Key,
            p => new PartPrice(p.Key, p.Value.Name, p.Value.Unit, p.Value.NetPrice, CostOf(p.Value, costs),
                p.Value.TaxRateCode is { } own ? tax.Find(own) : usual),
            StringComparer.Ordinal));
    }

    /// <summary>Of one piece or litre: what its usual supplier asks, or what the last receipt cost.</summary>
    private static decimal? CostOf(Part part, Dictionary<Guid, decimal> costs) =>
        costs.TryGetValue(part.Id, out var cost) ? cost * (part.Unit == PartUnit.Millilitre ? PricedQuantity.BaseOf(EstimateUnit.Millilitre) : 1) : null;

    private static async Task<Dictionary<Guid, decimal>> Costs(WorkshopDbContext db, IReadOnlyList<Guid> parts, CancellationToken ct)
    {
        var received = await db.StockMovements.AsNoTracking()
            .Where(m => parts.Contains(m.PartId) && m.Kind == MovementKind.Received && m.UnitCost != null)
            .GroupBy(m => m.PartId)
            .Select(g => new { Part = g.Key, Cost = g.OrderByDescending(m => m.MovedAt).ThenByDescending(m => m.Id).First().UnitCost!.Value })
            .ToListAsync(ct);
        var supplied = await db.PartSupplies.AsNoTracking()
            .Where(s => parts.Contains(s.PartId) && s.Preferred && s.UnitCost != null)
            .Select(s => new { s.PartId, Cost = s.UnitCost!.Value }).ToListAsync(ct);
        var costs = received.ToDictionary(r => r.Part, r => r.Cost);
        foreach (var supply in supplied)
        {
            costs[supply.PartId] = supply.Cost;
        }

        return costs;
    }
}
