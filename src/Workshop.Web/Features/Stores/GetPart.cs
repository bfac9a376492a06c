using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>One part with all that the stores know of it. The code of a part that was merged answers the surviving one.</summary>
public static class GetPart
{
    public sealed record Request(string Code);

    /// <param name="MergedCodes">Codes that mean this part since they were merged into it; each has its own ledger of before.</param>
    /// <param name="Alternatives">Parts that do the same work.</param>
    /// <param name="Replaces">Discontinued parts whose place it takes.</param>
    public sealed record Answer(
        string Code, string Name, PartKind Kind, PartUnit Unit,
        decimal? InnerDiameterMm, decimal? OuterDiameterMm, decimal? SectionMm, string? Material, string? Form, string? Designation, int? Hardness,
        bool FittedOnce, decimal? PackQuantity, int? ShelfLifeMonths, int? DeliveryDays, bool Stocked, bool Discontinued,
        decimal OnHand, decimal Reserved,
        IReadOnlyList<Lying> At, IReadOnlyList<ForCard> ReservedFor, IReadOnlyList<Package> Packages,
        IReadOnlyList<Related> Alternatives, Related? ReplacedBy, IReadOnlyList<Related> Replaces, IReadOnlyList<string> MergedCodes,
        IReadOnlyList<Supply> Supplies, IReadOnlyList<Expected> Expected, uint RowVersion) : IHasVersion;

    public sealed record Lying(
        string PlaceCode, string Place, string? Lot, LocalDate? ExpiresOn, ShimThickness? ThicknessMm, StockCondition Condition, decimal OnHand, decimal Reserved);

    public sealed record ForCard(int JobCardNumber, Instant StartsAt, string Place, string? Lot, decimal Quantity);

    public sealed record Package(string ScanCode, decimal Quantity);

    public sealed record Related(string Code, string Name, string? Note = null);

    public sealed record Supply(string Supplier, string? SupplierCode, decimal PackQuantity, decimal? SmallestQuantity, bool Preferred);

    public sealed record Expected(LocalDate On, decimal Quantity, int? OrderNumber);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartsByCode.Read(db, [request.Code], ct)).TryGetValue(request.Code, out var part))
        {
            return Problem.NotFound($"Part {request.Code}");
        }

        var lying = await Lies(db, part.Id, ct);
        var replaced = await db.Parts.AsNoTracking().Where(p => p.Id == part.ReplacedById)
            .Select(p => new Related(p.Code, p.Name, null)).SingleOrDefaultAsync(ct);
        return new Answer(
            part.Code, part.Name, part.Kind, part.Unit, part.InnerDiameterMm, part.OuterDiameterMm, part.SectionMm, part.Material, part.Form,
            part.Designation, part.Hardness, part.FittedOnce, part.PackQuantity, part.ShelfLifeMonths, part.DeliveryDays, part.Stocked,
            part.Discontinued, lying.Sum(l => l.OnHand), lying.Sum(l => l.Reserved), lying, await Held(db, part.Id, ct),
            await db.PartScanCodes.AsNoTracking().Where(c => c.PartId == part.Id).OrderBy(c => c.Code).Select(c => new Package(c.Code, c.Quantity)).ToListAsync(ct),
            await Alternatives(db, part.Id, ct), replaced,
            await db.Parts.AsNoTracking().Where(p => p.ReplacedById == part.Id).OrderBy(p => p.Code).Select(p => new Related(p.Code, p.Name, null)).ToListAsync(ct),
            await db.Parts.AsNoTracking().Where(p => p.MergedIntoId == part.Id).OrderBy(p => p.Code).Select(p => p.Code).ToListAsync(ct),
            await Supplies(db, part.Id, ct), await Deliveries(db, part.Id, ct),
            await db.Parts.Where(p => p.Id == part.Id).Select(p => EF.Property<uint>(p, MappingExtensions.RowVersion)).SingleAsync(ct));
    }

    private static async Task<IReadOnlyList<Lying>> Lies(WorkshopDbContext db, Guid part, CancellationToken ct) => await (
        from balance in db.StockBalances.AsNoTracking()
        where balance.PartId == part && (balance.OnHand != 0 || balance.Reserved != 0)
        join place in db.StoragePlaces on balance.PlaceId equals place.Id
        join lot in db.StockLots on balance.LotId equals lot.Id into lots
        from lot in lots.DefaultIfEmpty()
        orderby balance.Thickness, place.WalkOrder, place.Name, lot!.ExpiresOn, lot.Code, balance.Condition
        select new Lying(place.Code, place.Name, lot.Code, lot.ExpiresOn, balance.Thickness, balance.Condition, balance.OnHand, balance.Reserved)).ToListAsync(ct);

    private static async Task<IReadOnlyList<ForCard>> Held(WorkshopDbContext db, Guid part, CancellationToken ct)
    {
        var held = await (
            from moved in db.StockMovements.AsNoTracking()
                .Where(m => m.PartId == part && m.ReservedChange != 0 && m.JobCardNumber != null)
                .GroupBy(m => new { m.JobCardNumber, m.PlaceId, m.LotId })
                .Where(g => g.Sum(m => m.ReservedChange) != 0)
                .Select(g => new { g.Key.JobCardNumber, g.Key.PlaceId, g.Key.LotId, Quantity = g.Sum(m => m.ReservedChange) })
            join card in db.JobCards on moved.JobCardNumber equals card.Number
            join place in db.StoragePlaces on moved.PlaceId equals place.Id
            join lot in db.StockLots on moved.LotId equals lot.Id into lots
            from lot in lots.DefaultIfEmpty()
            orderby card.StartsAt, card.Number
            select new { card.Number, card.StartsAt, place.Name, Lot = (string?)lot!.Code, moved.Quantity }).ToListAsync(ct);
        return [.. held.Select(h => new ForCard(h.Number, h.StartsAt, h.Name, h.Lot, h.Quantity))];
    }

    private static async Task<IReadOnlyList<Related>> Alternatives(WorkshopDbContext db, Guid part, CancellationToken ct) => await (
        from alternative in db.PartAlternatives.AsNoTracking()
        where alternative.PartId == part || alternative.AlternativeId == part
        from other in db.Parts
        where other.Id == (alternative.PartId == part ? alternative.AlternativeId : alternative.PartId)
        orderby other.Code
        select new Related(other.Code, other.Name, alternative.Note)).ToListAsync(ct);

    private static async Task<IReadOnlyList<Supply>> Supplies(WorkshopDbContext db, Guid part, CancellationToken ct) => await (
        from supply in db.PartSupplies.AsNoTracking()
        where supply.PartId == part
        join supplier in db.Suppliers on supply.SupplierId equals supplier.Id
        orderby supply.Preferred descending, supplier.Name
        select new Supply(supplier.Name, supply.SupplierCode, supply.PackQuantity, supply.SmallestQuantity, supply.Preferred)).ToListAsync(ct);

    private static async Task<IReadOnlyList<Expected>> Deliveries(WorkshopDbContext db, Guid part, CancellationToken ct) => await (
        from delivery in db.ExpectedDeliveries.AsNoTracking()
        where delivery.PartId == part && delivery.ClosedAt == null
        join line in db.PurchaseOrderLines on delivery.OrderLineId equals line.Id into lines
        from line in lines.DefaultIfEmpty()
        orderby delivery.ExpectedOn
        select new Expected(delivery.ExpectedOn, delivery.Quantity, (int?)line!.OrderNumber)).ToListAsync(ct);
}
