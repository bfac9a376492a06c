using Microsoft.EntityFrameworkCore;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Orders;

/// <summary>Saves a row that was read under a version; refused where somebody else changed it since.</summary>
internal static class Versions
{
    /// <summary>The row is written in any case, so that its version covers rows that belong to it.</summary>
    public static async Task<uint> Save<T>(WorkshopDbContext db, T row, uint version, CancellationToken ct)
        where T : class
    {
        var entry = db.Entry(row);
        entry.State = EntityState.Modified;
        var property = entry.Property<uint>(MappingExtensions.RowVersion);
        property.OriginalValue = version;
        await db.SaveChangesAsync(ct);
        return property.CurrentValue;
    }
}
