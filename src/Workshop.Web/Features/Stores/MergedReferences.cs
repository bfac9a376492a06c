using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// What points at a part and follows it into another: codes on packages, alternatives, who sells it, open orders and what is expected
/// of them, parts that it replaced, and codes that were merged into it before. What is over (closed orders, old movements) stays.
/// </summary>
internal static class MergedReferences
{
    /// <summary>An order with lines of both keeps them while one of them is partly here: the ledger names the line.</summary>
    public static async Task<Problem?> Refuse(WorkshopDbContext db, Part part, Part other, CancellationToken ct)
    {
        var order = await (
            from line in db.PurchaseOrderLines
            join same in db.PurchaseOrderLines on line.OrderNumber equals same.OrderNumber
            join open in db.PurchaseOrders on line.OrderNumber equals open.Number
            where line.PartId == part.Id && same.PartId == other.Id && line.Received > 0 && open.State != PurchaseOrderState.Closed
            select (int?)open.Number).FirstOrDefaultAsync(ct);
        return order is null ? null : Problem.Conflict("order-partly-here",
            $"Order {order} has both parts on it, and {part.Name} of it is partly here; close that order first.");
    }

    /// <summary>The last of all: from here on the code of <paramref name="part"/> means <paramref name="other"/>.</summary>
    public static async Task Follow(WorkshopDbContext db, Guid part, Guid other, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync(
            $"""
             update part_scan_codes set part_id = {other} where part_id = {part};

             insert into part_alternatives (part_id, alternative_id, note)
               select {other}, a.far, min(a.note) from (
                 select case when part_id = {part} then alternative_id else part_id end as far, note
                 from part_alternatives where {part} in (part_id, alternative_id)) a
               where a.far <> {other} and not exists (
                 select from part_alternatives b
                 where (b.part_id = {other} and b.alternative_id = a.far) or (b.part_id = a.far and b.alternative_id = {other}))
               group by a.far;
             delete from part_alternatives where {part} in (part_id, alternative_id);

             delete from part_supplies s where part_id = {part}
               and exists (select from part_supplies o where o.part_id = {other} and o.supplier_id = s.supplier_id);
             update part_supplies set part_id = {other},
                 preferred = preferred and not exists (select from part_supplies o where o.part_id = {other} and o.preferred)
               where part_id = {part};
             """, ct);
        await db.Database.ExecuteSqlAsync(
            $"""
             update purchase_order_lines o set quantity = o.quantity + l.quantity
               from purchase_order_lines l join purchase_orders p on p.number = l.order_number
               where p.state <> 'closed' and l.part_id = {part} and o.part_id = {other} and o.order_number = l.order_number;
             update expected_deliveries d set order_line_id = o.id
               from purchase_order_lines l
               join purchase_orders p on p.number = l.order_number
               join purchase_order_lines o on o.order_number = l.order_number and o.part_id = {other}
               where p.state <> 'closed' and l.part_id = {part} and d.order_line_id = l.id;
             delete from purchase_order_lines l using purchase_orders p, purchase_order_lines o
               where p.number = l.order_number and p.state <> 'closed' and l.part_id = {part}
                 and o.order_number = l.order_number and o.part_id = {other};
             update purchase_order_lines l set part_id = {other} from purchase_orders p
               where p.number = l.order_number and p.state <> 'closed' and l.part_id = {part};
             update expected_deliveries set part_id = {other} where part_id = {part} and closed_at is null;

             update parts set merged_into_id = {other} where merged_into_id = {part};
             update parts set replaced_by_id = nullif({other}, id) where replaced_by_id = {part};
             update parts set merged_into_id = {other}, replaced_by_id = null, stocked = false where id = {part};
             """, ct);
    }
}
