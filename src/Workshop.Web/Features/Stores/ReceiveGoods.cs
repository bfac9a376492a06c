using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Shims;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>Goods in: new parts of one kind, to one place. One movement, but of shims one each.</summary>
public static class ReceiveGoods
{
    private const decimal SmallestQuantity = 0.0001m;
    private const decimal LargestQuantity = 1_000_000m;
    private const int QuantityDecimals = 4;

    public sealed record Request
    {
        public string? PartCode { get; init; }

        public Guid? PlaceId { get; init; }

        /// <summary>In the part's unit: pieces, or millilitres.</summary>
        public decimal? Quantity { get; init; }

        /// <summary>Shims only, and always of shims: as the micrometer reads it.</summary>
        public decimal? ThicknessMm { get; init; }
    }

    /// <param name="MovementId">The movement; of several shims, which have one each, the first.</param>
    /// <param name="OnHand">At that place, of that thickness, after the receipt.</param>
    public sealed record Answer(
        Guid MovementId, string PartCode, string Name, PartUnit Unit, string Place, decimal Quantity, decimal OnHand);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the stores' code of what came in").IsAtMost(Limits.Code);
            RuleFor(r => r.PlaceId).IsGiven("the place where it is put");
            RuleFor(r => r.Quantity).IsGiven("how much came in")
                .IsWithin(SmallestQuantity, LargestQuantity, QuantityDecimals, "pieces or ml");
            RuleFor(r => r.ThicknessMm).IsShimThickness();
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var part = await db.Parts.AsNoTracking().SingleOrDefaultAsync(p => p.Code == request.PartCode, ct);
        if (part is null)
        {
            return Problem.Impossible("part-unknown", "partCode",
                $"partCode is \"{request.PartCode}\": no part has it; choose one of GET /api/v1/stock.");
        }

        var place = await db.StoragePlaces.AsNoTracking().SingleOrDefaultAsync(p => p.Id == request.PlaceId, ct);
        if (place is null)
        {
            return Problem.Impossible("place-unknown", "placeId",
                $"placeId is {request.PlaceId}: no place has it; choose one of GET /api/v1/stock/places.");
        }

        if (ReceiptRules.Refuse(part, request.Quantity!.Value, request.ThicknessMm) is { } refused)
        {
            return refused;
        }

        ShimThickness? thickness = request.ThicknessMm is { } mm ? ShimThickness.FromMillimetres(mm) : null;
        var now = clock.GetCurrentInstant();
        IReadOnlyList<StockMovement> movements = thickness is { } measured
            ? ShimLedger.Receipt(part.Id, place.Id, measured, null, (int)request.Quantity.Value, actor.PersonId, now)
            :
            [
                new StockMovement
                {
                    Id = NewId.At(now),
                    PartId = part.Id,
                    PlaceId = place.Id,
                    Kind = MovementKind.Received,
                    OnHandChange = request.Quantity.Value,
                    ReservedChange = 0,
                    MovedBy = actor.PersonId,
                    MovedAt = now,
                },
            ];
        db.StockMovements.AddRange(movements);
        await db.SaveChangesAsync(ct);
        var onHand = await db.StockBalances.AsNoTracking()
            .Where(b => b.PartId == part.Id && b.PlaceId == place.Id && b.Thickness == thickness && b.Condition == StockCondition.New)
            .Select(b => b.OnHand).SingleAsync(ct);
        return new Answer(movements[0].Id, part.Code, part.Name, part.Unit, place.Name, request.Quantity.Value, onHand);
    }
}
