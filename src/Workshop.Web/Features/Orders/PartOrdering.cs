using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Stores;

namespace Workshop.Web.Features.Orders;

/// <summary>What the use cases that say how a part is ordered have in common.</summary>
internal static class PartOrdering
{
    /// <summary>Holds the part's row, so that two people never prefer two suppliers at once.</summary>
    public static async Task<Outcome<Part>> Lock(WorkshopDbContext db, string code, CancellationToken ct)
    {
        if (!(await PartsByCode.Read(db, [code], ct)).TryGetValue(code, out var named))
        {
            return Problem.NotFound($"Part {code}");
        }

        await db.Database.ExecuteSqlAsync($"select 1 from parts where id = {named.Id} for no key update", ct);
        return await db.Parts.SingleAsync(p => p.Id == named.Id, ct);
    }

    /// <summary>Where one is preferred, the others are not: the database allows one, so they are written first.</summary>
    public static async Task PreferOnly(WorkshopDbContext db, PartSupply supply, CancellationToken ct)
    {
        if (supply.Preferred)
        {
            await db.PartSupplies.Where(s => s.PartId == supply.PartId && s.Id != supply.Id && s.Preferred)
                .ExecuteUpdateAsync(s => s.SetProperty(x => x.Preferred, false), ct);
        }
    }
}
