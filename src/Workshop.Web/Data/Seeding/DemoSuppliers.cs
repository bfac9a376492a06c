using Microsoft.EntityFrameworkCore;
using Workshop.Web.Features.Orders;

namespace Workshop.Web.Data.Seeding;

/// <summary>Who sells what to the invented workshop, as seed/demo/suppliers.json says.</summary>
internal sealed record DemoSupplies(string About, IReadOnlyList<DemoSupplier> Suppliers, IReadOnlyList<DemoSupply> Supplies);

internal sealed record DemoSupplier(
    string Name, int DeliveryDays, decimal DeliveryDaysSd, decimal? SmallestOrder, string? CustomerNumber, string? Email = null);

/// <param name="Supplier">By name; the first of a part is preferred.</param>
internal sealed record DemoSupply(
    string Part, string Supplier, decimal PackQuantity, decimal UnitCost, decimal? SmallestQuantity = null, int? DeliveryDays = null,
    string? SupplierCode = null);

/// <summary>
/// Enters the suppliers, and what is proposed on the seeding day of the first of them as a draft and of the second as an order that is
/// on its way.
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

        await OrderOf(ids[demo.Suppliers[0].Name], isPlaced: false, ct);
        await OrderOf(ids[demo.Suppliers[1].Name], isPlaced: true, ct);
    }

    /// <summary>Half of what is proposed, so that the rest stands as a proposal.</summary>
    private async Task OrderOf(Guid supplier, bool isPlaced, CancellationToken ct)
    {
        var proposed = await staff.Look(Manager, new ProposeOrders.Request(), ProposeOrders.Handle, ct);
        var lines = proposed.Suppliers.SingleOrDefault(s => s.SupplierId == supplier)?.Lines ?? [];
        if (lines.Count == 0)
        {
            return;
        }

        var made = await staff.Do(Manager, new DraftOrder.Request
        {
            SupplierId = supplier,
            Lines = [.. lines.Where((_, i) => i % 2 == 0).Select(l => new OrderLineFields { PartCode = l.PartCode, Quantity = l.Quantity, Reason = l.Why })],
        }, DraftOrder.Handle, ct);
        if (isPlaced)
        {
            var version = await db.PurchaseOrders.AsNoTracking().Where(o => o.Number == made.Number)
                .Select(o => EF.Property<uint>(o, MappingExtensions.RowVersion)).SingleAsync(ct);
            await staff.Do(Manager, new PlaceOrder.Request { Number = made.Number, RowVersion = version }, PlaceOrder.Handle, ct);
        }
    }
}
