using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Orders;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Shims;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>
/// Which shims to order of whom: what the stocking of shims wants, thickness by thickness, less what is on order already.
/// </summary>
internal static class ShimsToOrder
{
    private const double DaysOfMonth = 365.2425 / 12;

    public static async Task<IReadOnlyList<(Guid SupplierId, ProposeOrders.Line Line)>> Read(
        WorkshopDbContext db, Actor actor, IClock clock, OrderingOutlook outlook, int lastsDays, ILookup<Guid, int> drafts, CancellationToken ct)
    {
        var sold = outlook.Supplies.Keys.ToList();
        var boxes = await (
            from series in db.ShimSeries.AsNoTracking()
            join part in db.Parts on series.PartId equals part.Id
            where sold.Contains(part.Id) && !part.Discontinued && part.Stocked
            orderby part.Code
            select part).ToListAsync(ct);
        var ids = boxes.ConvertAll(b => b.Id);
        var coming = (await db.ExpectedDeliveries.AsNoTracking().Where(d => d.ClosedAt == null && d.Thickness != null && ids.Contains(d.PartId)).ToListAsync(ct))
            .ToLookup(d => (d.PartId, d.Thickness!.Value), d => d.Quantity);
        var lines = new List<(Guid, ProposeOrders.Line)>();
        foreach (var part in boxes)
        {
            var supply = outlook.Supplies[part.Id];
            var days = OrderingOutlook.DaysOf(supply, outlook.Suppliers[supply.SupplierId]) + lastsDays;
            var level = (decimal)(part.ServiceLevel ?? outlook.Profile.ServiceLevel);
            var asked = new GetStocking.Request(part.Code, Math.Clamp((int)Math.Ceiling(days / DaysOfMonth), 1, 36), decimal.Round(level, 4));
            if (!(await GetStocking.Handle(asked, db, actor, clock, ct)).TryGet(out var stocking, out _))
            {
                continue;
            }

            lines.AddRange(stocking.Sizes
                .Select(size => (supply.SupplierId, LineOf(part, supply, size, coming[(part.Id, size.Size)].Sum(), stocking, [.. drafts[part.Id]])))
                .Where(l => l.Item2.Quantity > 0));
        }

        return lines;
    }

    private static ProposeOrders.Line LineOf(
        Part part, PartSupply supply, SizeToHold size, decimal onOrder, GetStocking.Answer stocking, IReadOnlyList<int> drafts)
    {
        var wanted = Math.Max(size.Hold - size.OnHand - onOrder, 0);
        var quantity = PackageSizes.RoundUp(wanted, supply.PackQuantity, supply.SmallestQuantity);
        var rounded = quantity == wanted ? "" : string.Create(CultureInfo.InvariantCulture, $", in packages of {supply.PackQuantity:0.####}: {quantity:0.####}");
        return new ProposeOrders.Line(
            part.Code, part.Name, part.Unit, size.Size.Millimetres, quantity, supply.UnitCost, OrderSums.OfLine(quantity, supply.UnitCost),
            size.OnHand, 0, onOrder, null, size.Hold, drafts,
            string.Create(CultureInfo.InvariantCulture,
                $"{size.Expected:0.0} of {size.Size.Millimetres:0.000} mm are expected to be asked for until {Days.Write(stocking.Until)} ({(size.IsWide ? "negative binomial" : "Poisson")}). Enough with {OrderWords.Percent(stocking.ServiceLevel)}: {size.Hold}. In the box {size.OnHand}; on order {onOrder:0.####}: {wanted:0.####} to order{rounded}."));
    }
}
