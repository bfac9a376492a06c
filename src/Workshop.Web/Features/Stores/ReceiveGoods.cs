using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>Goods in: new parts of one kind, to one place, of one lot. One movement, but of shims one each.</summary>
public static class ReceiveGoods
{
    private const decimal DearestUnit = 1_000_000m;
    private const int CostDecimals = 4;

    public sealed record Request
    {
        public string? PartCode { get; init; }

        /// <summary>Or <see cref="PlaceCode"/>.</summary>
        public Guid? PlaceId { get; init; }

        public string? PlaceCode { get; init; }

        /// <summary>In the part's unit: pieces, or millilitres.</summary>
        public decimal? Quantity { get; init; }

        /// <summary>Shims only, and always of shims: as the micrometer reads it.</summary>
        public decimal? ThicknessMm { get; init; }

        /// <summary>As the maker marks it; asked for of parts with a shelf life.</summary>
        public string? LotCode { get; init; }

        /// <summary>The last day of the lot; reckoned from the shelf life where it is not given.</summary>
        public LocalDate? ExpiresOn { get; init; }

        /// <summary>Before tax, of one piece or millilitre.</summary>
        public decimal? UnitCost { get; init; }
    }

    /// <param name="MovementId">The movement; of several shims, which have one each, the first.</param>
    /// <param name="OnHand">At that place, of that thickness and lot, after the receipt.</param>
    public sealed record Answer(
        Guid MovementId, string PartCode, string Name, PartUnit Unit, string Place, decimal Quantity, decimal OnHand,
        string? LotCode, LocalDate? ExpiresOn);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the stores' code of what came in").IsAtMost(Limits.Code);
            RuleFor(r => r.PlaceId).IsGiven("the place where it is put").When(r => string.IsNullOrEmpty(r.PlaceCode));
            RuleFor(r => r.Quantity).IsGiven("how much came in").IsQuantity();
            RuleFor(r => r.ThicknessMm).IsShimThickness();
            RuleFor(r => r.LotCode).IsAtMost(QuantityRules.LongestLot);
            RuleFor(r => r.UnitCost).IsWithin(0, DearestUnit, CostDecimals, "");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartsByCode.Locked(db, request.PartCode!, "partCode", ct)).TryGet(out var part, out var problem)
            || !(await Place(request, db, ct)).TryGet(out var place, out problem))
        {
            return problem;
        }

        if (ReceiptRules.Refuse(part, request.Quantity!.Value, request.ThicknessMm) is { } refused)
        {
            return refused;
        }

        var now = clock.GetCurrentInstant();
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        if (!(await GoodsIn.LotOf(db, part, request.LotCode, request.ExpiresOn, today, now, ct)).TryGet(out var lot, out problem))
        {
            return problem;
        }

        ShimThickness? thickness = request.ThicknessMm is { } mm ? ShimThickness.FromMillimetres(mm) : null;
        var goods = new GoodsIn(part, place, request.Quantity.Value, thickness, lot, request.UnitCost);
        var movements = goods.Movements(actor, now);
        db.StockMovements.AddRange(movements);
        await db.SaveChangesAsync(ct);
        var lotId = lot?.Id;
        var onHand = await db.StockBalances.AsNoTracking()
            .Where(b => b.PartId == part.Id && b.PlaceId == place.Id && b.Thickness == thickness && b.Condition == StockCondition.New && b.LotId == lotId)
            .Select(b => b.OnHand).SingleAsync(ct);
        return new Answer(
            movements[0].Id, part.Code, part.Name, part.Unit, place.Name, request.Quantity.Value, onHand, lot?.Code, lot?.ExpiresOn);
    }

    private static async Task<Outcome<StoragePlace>> Place(Request request, WorkshopDbContext db, CancellationToken ct)
    {
        var (field, given) = request.PlaceId is { } ? ("placeId", request.PlaceId.ToString()) : ("placeCode", request.PlaceCode);
        var place = await db.StoragePlaces.AsNoTracking().SingleOrDefaultAsync(
            p => request.PlaceId != null ? p.Id == request.PlaceId : p.Code == request.PlaceCode, ct);
        if (place is null)
        {
            return Problem.Impossible("place-unknown", field, $"{field} is {given}: no place has it; choose one of GET /api/v1/stock/places.");
        }

        return PlacesByCode.RefusePutting(place, field) is { } refused ? refused : place;
    }
}
