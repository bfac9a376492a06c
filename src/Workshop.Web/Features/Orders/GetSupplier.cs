using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>One supplier and what it sells.</summary>
public static class GetSupplier
{
    public sealed record Request(Guid Id);

    public sealed record Answer(
        Guid Id,
        string Name,
        string? Email,
        string? CustomerNumber,
        int DeliveryDays,
        double DeliveryDaysSd,
        decimal? SmallestOrder,
        bool Retired,
        string Currency,
        IReadOnlyList<Sold> Sells,
        uint RowVersion) : IHasVersion;

    /// <param name="Preferred">The one that proposals of the part go to.</param>
    public sealed record Sold(
        string PartCode, string Name, PartUnit Unit, string? SupplierCode, decimal PackQuantity, decimal? SmallestQuantity, decimal? UnitCost,
        int? DeliveryDays, bool Preferred);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var found = await db.Suppliers.AsNoTracking().Where(s => s.Id == request.Id)
            .Select(s => new { Supplier = s, Version = EF.Property<uint>(s, MappingExtensions.RowVersion) }).SingleOrDefaultAsync(ct);
        if (found is null)
        {
            return Problem.NotFound($"Supplier {request.Id}");
        }

        var sells = await (
            from supply in db.PartSupplies.AsNoTracking()
            join part in db.Parts on supply.PartId equals part.Id
            where supply.SupplierId == request.Id
            orderby part.Code
            select new Sold(
                part.Code, part.Name, part.Unit, supply.SupplierCode, supply.PackQuantity, supply.SmallestQuantity, supply.UnitCost,
                supply.DeliveryDays, supply.Preferred)).ToListAsync(ct);
        var supplier = found.Supplier;
        return new Answer(
            supplier.Id, supplier.Name, supplier.Email, supplier.CustomerNumber, supplier.DeliveryDays, supplier.DeliveryDaysSd,
            supplier.SmallestOrder, supplier.Retired, await db.WorkshopProfiles.AsNoTracking().Select(p => p.Currency).SingleAsync(ct), sells, found.Version);
    }
}
