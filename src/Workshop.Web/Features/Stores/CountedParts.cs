using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>The lines of a count that hold, with what the books say now.</summary>
internal static class CountedParts
{
    public static async Task<IReadOnlyList<CountedPart>> Read(WorkshopDbContext db, StockCount count, CancellationToken ct)
    {
        var lines = CountSheet.Standing(await db.StockCountLines.AsNoTracking().Where(l => l.CountId == count.Id).ToListAsync(ct));
        var ids = lines.Select(l => l.PartId).ToList();
        var parts = await db.Parts.AsNoTracking().Where(p => ids.Contains(p.Id)).ToDictionaryAsync(p => p.Id, ct);
        var lotIds = lines.Select(l => l.LotId).OfType<Guid>().ToList();
        var lots = await db.StockLots.AsNoTracking().Where(l => lotIds.Contains(l.Id)).ToDictionaryAsync(l => l.Id, l => l.Code, ct);
        var balances = (await db.StockBalances.AsNoTracking()
                .Where(b => b.PlaceId == count.PlaceId && b.Thickness == null && ids.Contains(b.PartId)).ToListAsync(ct))
            .ToDictionary(b => (b.PartId, b.LotId));
        return [.. lines
            .Select(l => new CountedPart(
                l, parts[l.PartId], l.LotId is { } lot ? lots[lot] : null,
                balances.GetValueOrDefault((l.PartId, l.LotId))?.OnHand ?? 0, balances.GetValueOrDefault((l.PartId, l.LotId))?.Reserved ?? 0))
            .OrderBy(p => p.Part.Code, StringComparer.Ordinal).ThenBy(p => p.Lot, StringComparer.Ordinal)];
    }
}
