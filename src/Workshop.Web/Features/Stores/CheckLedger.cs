using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// Whether what is on hand and reserved is the sum of the ledger, row by row, and whether shims lie where the balances say: the
/// database's own view <c>stock_differences</c>. There is none unless somebody wrote past the trigger.
/// </summary>
public static class CheckLedger
{
    private const int MostShown = 100;

    public sealed record Request;

    /// <param name="Differences">Rows where the two differ; 0 in a database that is in order.</param>
    public sealed record Answer(long Movements, long Balances, int Differences, IReadOnlyList<Row> Rows);

    /// <param name="LedgerOnHand">The sum of its movements; of shims that lie elsewhere, how many lie there.</param>
    public sealed record Row(
        string PartCode, string Place, decimal? ThicknessMm, string? Lot,
        decimal LedgerOnHand, decimal BalanceOnHand, decimal LedgerReserved, decimal BalanceReserved);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var rows = await db.Database.SqlQuery<Row>(
            $"""
             select p.code as part_code, s.name as place, d.thickness_mm, l.code as lot,
                    d.ledger_on_hand, d.balance_on_hand, d.ledger_reserved, d.balance_reserved
             from stock_differences d join parts p on p.id = d.part_id join storage_places s on s.id = d.place_id
             left join stock_lots l on l.id = d.lot_id
             order by p.code, s.name, d.thickness_mm, l.code
             """).ToListAsync(ct);
        return new Answer(
            await db.StockMovements.LongCountAsync(ct), await db.StockBalances.LongCountAsync(ct), rows.Count, [.. rows.Take(MostShown)]);
    }
}
