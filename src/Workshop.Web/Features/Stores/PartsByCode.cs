using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Outcomes;
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

    /// <summary>The part that a code means; a refusal that names <paramref name="field"/> where there is none.</summary>
    public static async Task<Outcome<Part>> Find(WorkshopDbContext db, string code, string field, CancellationToken ct) =>
        (await Read(db, [code], ct)).TryGetValue(code, out var part)
            ? part
            : Problem.Impossible("part-unknown", field, $"{field} is \"{code}\": no part has it; choose one of GET /api/v1/stock.");

    /// <summary>The same for a write: the part's row is locked, as whoever picks, counts or merges it does.</summary>
    public static async Task<Outcome<Part>> Locked(WorkshopDbContext db, string code, string field, CancellationToken ct)
    {
        while (true)
        {
            var found = await Find(db, code, field, ct);
            if (!found.TryGet(out var part, out _))
            {
                return found;
            }

            // Whoever merged it meanwhile held the lock: its code then means another part.
            await db.Database.ExecuteSqlAsync($"select 1 from parts where id = {part.Id} for no key update", ct);
            if (!await db.Parts.AnyAsync(p => p.Id == part.Id && p.MergedIntoId != null, ct))
            {
                return found;
            }
        }
    }
}
