using FluentValidation;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// From one place to another. What nobody has reserved goes first; where more goes, reservations go along with the goods, so that no
/// card loses anything.
/// </summary>
public static class MoveStock
{
    public sealed record Request
    {
        public string? PartCode { get; init; }

        public string? FromPlaceCode { get; init; }

        public string? ToPlaceCode { get; init; }

        public string? LotCode { get; init; }

        /// <summary>In the part's unit.</summary>
        public decimal? Quantity { get; init; }
    }

    /// <param name="CardsThatFollow">Cards whose reservation lies at the new place now.</param>
    public sealed record Answer(
        string PartCode, string Name, PartUnit Unit, decimal Quantity, string From, string To, IReadOnlyList<CardThatLost> CardsThatFollow);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the stores' code of what is moved").IsAtMost(Limits.Code);
            RuleFor(r => r.FromPlaceCode).IsGiven("the code of the place where it lies");
            RuleFor(r => r.ToPlaceCode).IsGiven("the code of the place where it goes")
                .Must((r, to) => to is null || to != r.FromPlaceCode).WithMessage("{PropertyName} is the place where it lies already; name another.");
            RuleFor(r => r.Quantity).IsGiven("how much is moved").IsQuantity();
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await StockAt.Locked(db, request.PartCode!, request.FromPlaceCode!, request.LotCode, true, ct, "fromPlaceCode")).TryGet(out var here, out var problem)
            || !(await PlacesByCode.Find(db, request.ToPlaceCode!, "toPlaceCode", ct)).TryGet(out var place, out problem))
        {
            return problem;
        }

        var quantity = request.Quantity!.Value;
        if ((PlacesByCode.RefusePutting(place, "toPlaceCode") ?? here.RefuseTaking(quantity)) is { } refused)
        {
            return refused;
        }

        var there = here with { Place = place };
        var now = clock.GetCurrentInstant();

        // Where more is reserved than lies here, no more reservations go than goods.
        var following = GivingWay.Take(quantity, await here.GivingWayWhenLeft(db, here.OnHand - quantity, ct));
        db.StockMovements.AddRange(
            here.Movement(MovementKind.Moved, -quantity, actor, now), there.Movement(MovementKind.Moved, quantity, actor, now));
        foreach (var card in following)
        {
            db.StockMovements.AddRange(
                here.Movement(MovementKind.Moved, 0, actor, now, -card.Quantity, card.CardNumber),
                there.Movement(MovementKind.Moved, 0, actor, now, card.Quantity, card.CardNumber));
        }

        await db.SaveChangesAsync(ct);
        return new Answer(here.Part.Code, here.Name, here.Part.Unit, quantity, here.Place.Name, place.Name, CardThatLost.Of(following));
    }
}
