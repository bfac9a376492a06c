using FluentValidation;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// Thrown away, with a reason. What is broken is broken, whoever has reserved it: the visits that begin last lose their reservation,
/// and the answer names them.
/// </summary>
public static class ScrapStock
{
    public sealed record Request
    {
        public string? PartCode { get; init; }

        public string? PlaceCode { get; init; }

        public string? LotCode { get; init; }

        /// <summary>In the part's unit.</summary>
        public decimal? Quantity { get; init; }

        public ScrapReason? Reason { get; init; }

        /// <summary>What was seen, where more is to be said.</summary>
        public string? Remark { get; init; }
    }

    public sealed record Answer(
        string PartCode, string Name, PartUnit Unit, decimal Quantity, string Place, decimal OnHand, IReadOnlyList<CardThatLost> CardsThatLost);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the stores' code of what is scrapped").IsAtMost(Limits.Code);
            RuleFor(r => r.PlaceCode).IsGiven("the code of the place where it lies");
            RuleFor(r => r.Quantity).IsGiven("how much is scrapped").IsQuantity();
            RuleFor(r => r.Reason).IsGiven("expired, damaged, contaminated or obsolete")
                .Must(r => r is null || ScrapReasons.OfParts.Contains(r.Value))
                .WithMessage((_, r) => $"{{PropertyName}} is {r}, which is said of shims: expired, damaged, contaminated or obsolete is allowed.");
            RuleFor(r => r.Remark).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await StockAt.Locked(db, request.PartCode!, request.PlaceCode!, request.LotCode, true, ct)).TryGet(out var at, out var problem))
        {
            return problem;
        }

        var quantity = request.Quantity!.Value;
        if (at.RefuseTaking(quantity) is { } refused)
        {
            return refused;
        }

        var now = clock.GetCurrentInstant();
        var remark = await StockRemarks.Add(db, request.Remark, actor, now, ct);
        var losing = await at.GivingWayWhenLeft(db, at.OnHand - quantity, ct);
        db.StockMovements.Add(at.Movement(MovementKind.Scrapped, -quantity, actor, now, new StockAt.Reasons(request.Reason, remark)));
        db.StockMovements.AddRange(losing.Select(c => at.Movement(MovementKind.Released, 0, actor, now, -c.Quantity, c.CardNumber)));
        await db.SaveChangesAsync(ct);
        return new Answer(
            at.Part.Code, at.Name, at.Part.Unit, quantity, at.Place.Name, at.OnHand - quantity, CardThatLost.Of(losing));
    }
}
