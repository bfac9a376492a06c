using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Records;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Records;

/// <summary>Parts and fluids that left the stores for a visit and did not come back; shims are said valve by valve.</summary>
internal static class RecordedParts
{
    public static async Task<IReadOnlyList<RecordedPart>> Read(WorkshopDbContext db, int number, CancellationToken ct)
    {
        var used = await (
            from movement in db.StockMovements.AsNoTracking()
            join part in db.Parts on movement.PartId equals part.Id
            where movement.JobCardNumber == number && part.Kind != PartKind.Shim
                && (movement.Kind == MovementKind.Issued || movement.Kind == MovementKind.Returned)
            group movement.OnHandChange by new { part.Name, part.Designation, part.Unit } into changes
            select new { changes.Key, Quantity = -changes.Sum() }).ToListAsync(ct);
        return [.. used.Where(u => u.Quantity > 0).OrderBy(u => u.Key.Unit).ThenBy(u => u.Key.Name, StringComparer.Ordinal)
            .Select(u => new RecordedPart(u.Key.Name, u.Key.Designation, u.Quantity, u.Key.Unit))];
    }
}
