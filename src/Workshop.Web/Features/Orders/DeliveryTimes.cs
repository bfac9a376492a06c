using Microsoft.EntityFrameworkCore;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Orders;

/// <summary>How many days a part takes from an order to its delivery.</summary>
internal static class DeliveryTimes
{
    /// <summary>
    /// By part: as the supplier says from whom it is bought, the preferred one where there is a choice; else as the part says. Parts of
    /// which nobody knows are left out.
    /// </summary>
    public static async Task<IReadOnlyDictionary<Guid, int>> Read(WorkshopDbContext db, IReadOnlyCollection<Guid> parts, CancellationToken ct)
    {
        var sold = await (
            from supply in db.PartSupplies.AsNoTracking()
            join supplier in db.Suppliers on supply.SupplierId equals supplier.Id
            where parts.Contains(supply.PartId) && !supplier.Retired
            select new { supply.PartId, supply.Preferred, Days = supply.DeliveryDays ?? supplier.DeliveryDays }).ToListAsync(ct);
        var days = await db.Parts.AsNoTracking().Where(p => parts.Contains(p.Id) && p.DeliveryDays != null)
            .ToDictionaryAsync(p => p.Id, p => p.DeliveryDays!.Value, ct);
        foreach (var part in sold.GroupBy(s => s.PartId))
        {
            days[part.Key] = part.OrderByDescending(s => s.Preferred).ThenBy(s => s.Days).First().Days;
        }

        return days;
    }
}
