using Microsoft.EntityFrameworkCore;
using Workshop.Web.Features.Orders;

namespace Workshop.Web.Data.Seeding;

/// <summary>Who sells what to the invented workshop, as seed/demo/suppliers.json says.</summary>
internal sealed record DemoSupplies(string About, IReadOnlyList<DemoSupplier> Suppliers, IReadOnlyList<DemoSupply> Supplies, IReadOnlyList<DemoOrder> Placed);

internal sealed record DemoOrder(string Supplier, string Why, IReadOnlyList<DemoOrderLine> Lines);

internal sealed record DemoOrderLine(string Part, decimal Quantity);

internal sealed record DemoSupplier(
    string Name, int DeliveryDays, decimal DeliveryDaysSd, decimal? SmallestOrder, string? CustomerNumber, string? Email = null);

/// <param name="Supplier">By name; the first of a part is preferred.</param>
internal sealed record DemoSupply(
    string Part, string Supplier, decimal PackQuantity, decimal UnitCost, decimal? SmallestQuantity = null, int? DeliveryDays = null,
    string? SupplierCode = null);

/// <summary>
/// Enters the suppliers and what they sell, orders that are on their way, and a draft of what is proposed of the first of them.
/// </summary>
internal sealed class DemoSuppliers(WorkshopDbContext db, DemoStaff staff)
{
    private const string Manager = "otto";

    public async Task Write(CancellationToken ct)
    {
        var demo = SeedFiles.Suppliers();
        var ids = new Dictionary<string, Guid>(StringComparer.Ordinal);
        foreach (var supplier in demo.Suppliers)
        {
            ids.Add(supplier.Name, (await staff.Do(Manager, new AddSupplier.Request
            {
                Name = supplier.Name, Email = supplier.Email, CustomerNumber = supplier.CustomerNumber, DeliveryDays = supplier.DeliveryDays,
                DeliveryDaysSd = supplier.DeliveryDaysSd, SmallestOrder = supplier.SmallestOrder,
            }, AddSupplier.Handle, ct)).Id);
        }

        foreach (var supply in demo.Supplies)
        {
            await staff.Do(Manager, new AddSupply.Request
            {
                PartCode = supply.Part, SupplierId = ids[supply.Supplier], SupplierCode = supply.SupplierCode, PackQuantity = supply.PackQuantity,
                SmallestQuantity = supply.SmallestQuantity, UnitCost = supply.UnitCost, DeliveryDays = supply.DeliveryDays,
            }, AddSupply.Handle, ct);
        }

        foreach (var order in demo.Placed)
        {
            await Place(ids[order.Supplier], order, ct);
        }

        await Draft(ids[demo.Suppliers[0].Name], ct);
    }

    /// <summary>Half of what is proposed, so that the rest stands as a proposal.</summary>
    private async Task Draft(Guid supplier, CancellationToken ct)
    {
        var proposed = await staff.Look(Manager, new ProposeOrders.Request(), ProposeOrders.Handle, ct);
        var lines = proposed.Suppliers.SingleOrDefault(s => s.SupplierId == supplier)?.Lines ?? [];
        if (lines.Count > 0)
        {
            await staff.Do(Manager, new DraftOrder.Request
            {
                SupplierId = supplier,
                Lines = [.. lines.Where((_, i) => i % 2 == 0).Select(l => new OrderLineFields { PartCode = l.PartCode, Quantity = l.Quantity, Reason = l.Why })],
            }, DraftOrder.Handle, ct);
        }
    }

    private async Task Place(Guid supplier, DemoOrder order, CancellationToken ct)
    {
        var made = await staff.Do(Manager, new DraftOrder.Request
        {
            SupplierId = supplier,
            Lines = [.. order.Lines.Select(l => new OrderLineFields { PartCode = l.Part, Quantity = l.Quantity, Reason = order.Why })],
        }, DraftOrder.Handle, ct);
        var version = await db.PurchaseOrders.AsNoTracking().Where(o => o.Number == made.Number)
            .Select(o => EF.Property<uint>(o, MappingExtensions.RowVersion)).SingleAsync(ct);
        await staff.Do(Manager, new PlaceOrder.Request { Number = made.Number, RowVersion = version }, PlaceOrder.Handle, ct);
    }
}
