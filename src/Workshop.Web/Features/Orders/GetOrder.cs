using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>One order: its lines with why, what came of each, and the text that goes to the supplier.</summary>
public static class GetOrder
{
    public sealed record Request(int Number);

    /// <param name="Email">Of the supplier, where the text may go.</param>
    /// <param name="NetSum">Of the lines whose cost is known.</param>
    /// <param name="MissingToSmallest">How far that is below the supplier's smallest order; absent where it is not.</param>
    /// <param name="Text">To be copied or printed; nothing is sent by itself.</param>
    public sealed record Answer(
        int Number,
        PurchaseOrderState State,
        Guid SupplierId,
        string Supplier,
        string? Email,
        string MadeBy,
        Instant MadeAt,
        string? PlacedBy,
        Instant? PlacedAt,
        string Currency,
        decimal NetSum,
        decimal? MissingToSmallest,
        IReadOnlyList<Line> Lines,
        IReadOnlyList<Receipt> Receipts,
        string Text,
        uint RowVersion) : IHasVersion;

    /// <param name="Open">What is still expected; 0 once it is not expected any more.</param>
    /// <param name="KeepsByLot">The part has a shelf life: a receipt names its lot.</param>
    public sealed record Line(
        Guid Id,
        string PartCode,
        string Name,
        PartUnit Unit,
        string? SupplierCode,
        decimal? ThicknessMm,
        decimal Quantity,
        decimal? UnitCost,
        decimal? NetCost,
        LocalDate? ExpectedOn,
        decimal Received,
        decimal Open,
        bool KeepsByLot,
        string? Reason);

    public sealed record Receipt(Instant At, string By, string PartCode, string Place, decimal Quantity, decimal? UnitCost);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var found = await (
            from order in db.PurchaseOrders.AsNoTracking()
            join supplier in db.Suppliers on order.SupplierId equals supplier.Id
            join maker in db.People on order.MadeBy equals maker.Id
            where order.Number == request.Number
            select new
            {
                Order = order, Supplier = supplier, MadeBy = maker.Name,
                PlacedBy = db.People.Where(p => p.Id == order.PlacedBy).Select(p => p.Name).FirstOrDefault(),
                Version = EF.Property<uint>(order, MappingExtensions.RowVersion),
            }).SingleOrDefaultAsync(ct);
        if (found is null)
        {
            return Problem.NotFound($"Order {request.Number}");
        }

        var rows = await (
            from line in db.PurchaseOrderLines.AsNoTracking()
            join part in db.Parts on line.PartId equals part.Id
            where line.OrderNumber == request.Number
            orderby part.Code, line.Thickness
            select new
            {
                Line = line, Part = part,
                Code = db.PartSupplies.Where(s => s.PartId == part.Id && s.SupplierId == found.Supplier.Id).Select(s => s.SupplierCode).FirstOrDefault(),
                Open = db.ExpectedDeliveries.Where(d => d.OrderLineId == line.Id && d.ClosedAt == null).Sum(d => d.Quantity),
            }).ToListAsync(ct);
        var lines = rows.ConvertAll(r => new Line(
            r.Line.Id, r.Part.Code, r.Part.Name, r.Part.Unit, r.Code, r.Line.Thickness?.Millimetres, r.Line.Quantity, r.Line.UnitCost,
            OrderSums.OfLine(r.Line.Quantity, r.Line.UnitCost), r.Line.ExpectedOn, r.Line.Received, r.Open, r.Part.ShelfLifeMonths is not null, r.Line.Reason));
        var profile = await db.WorkshopProfiles.AsNoTracking().SingleAsync(ct);
        var sum = lines.Sum(l => l.NetCost ?? 0);
        var day = (await WorkshopTimes.Read(db, ct)).DayOf(found.Order.PlacedAt ?? clock.GetCurrentInstant());
        return new Answer(
            found.Order.Number, found.Order.State, found.Supplier.Id, found.Supplier.Name, found.Supplier.Email, found.MadeBy, found.Order.MadeAt,
            found.PlacedBy, found.Order.PlacedAt, profile.Currency, sum,
            found.Supplier.SmallestOrder is { } smallest && sum < smallest ? smallest - sum : null,
            lines, await Receipts(db, [.. lines.Select(l => l.Id)], ct),
            OrderText.Write(profile.Name, profile.Phone, found.Supplier, found.Order.Number, day,
                rows.ConvertAll(r => new OrderTextLine(r.Code ?? r.Part.Code, r.Part.Name, r.Part.Unit, r.Line.Quantity, r.Line.Thickness))),
            found.Version);
    }

    /// <summary>Shims come in one movement each; those of one moment are shown together.</summary>
    private static async Task<IReadOnlyList<Receipt>> Receipts(WorkshopDbContext db, IReadOnlyCollection<Guid> lines, CancellationToken ct) =>
        [.. (await (
            from movement in db.StockMovements.AsNoTracking()
            join part in db.Parts on movement.PartId equals part.Id
            join place in db.StoragePlaces on movement.PlaceId equals place.Id
            join person in db.People on movement.MovedBy equals person.Id
            where movement.OrderLineId != null && lines.Contains(movement.OrderLineId.Value)
            select new { movement.MovedAt, By = person.Name, part.Code, Place = place.Name, movement.UnitCost, movement.OnHandChange }).ToListAsync(ct))
            .GroupBy(m => new { m.MovedAt, m.By, m.Code, m.Place, m.UnitCost })
            .OrderBy(g => g.Key.MovedAt).ThenBy(g => g.Key.Code, StringComparer.Ordinal)
            .Select(g => new Receipt(g.Key.MovedAt, g.Key.By, g.Key.Code, g.Key.Place, g.Sum(m => m.OnHandChange), g.Key.UnitCost))];
}
