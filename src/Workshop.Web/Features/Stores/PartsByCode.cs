using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// The one place that says which part a code means: specifications and old papers go on naming parts that were merged into
/// others since.
/// </summary>
internal static class PartsByCode
{
    /// <summary>The part that each code means now; codes that the stores do not know are left out.</summary>
    public static async Task<IReadOnlyDictionary<string, Part>> Read(
        WorkshopDbContext db, IReadOnlyCollection<string> codes, CancellationToken ct) =>
        await (
            from named in db.Parts.AsNoTracking()
            where codes.Contains(named.Code)
            from meant in db.Parts.AsNoTracking()
            where meant.Id == (named.MergedIntoId ?? named.Id)
            select new { named.Code, meant }).ToDictionaryAsync(p => p.Code, p => p.meant, StringComparer.Ordinal, ct);
}
