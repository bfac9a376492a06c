using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>What was issued for a card and not used goes back to a place; no more than was issued and is not back yet.</summary>
public static class ReturnToStock
{
    public sealed record Request
    {
        public string? PartCode { get; init; }

        public string? PlaceCode { get; init; }

        public string? LotCode { get; init; }

        /// <summary>In the part's unit.</summary>
        public decimal? Quantity { get; init; }

        public int? JobCardNumber { get; init; }
    }

    public sealed record Answer(string PartCode, string Name, PartUnit Unit, decimal Quantity, string Place, decimal OnHand);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the stores' code of what comes back").IsAtMost(Limits.Code);
            RuleFor(r => r.PlaceCode).IsGiven("the code of the place where it goes");
            RuleFor(r => r.Quantity).IsGiven("how much comes back").IsQuantity();
            RuleFor(r => r.JobCardNumber).IsGiven("the job card that it was issued for");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await StockAt.Locked(db, request.PartCode!, request.PlaceCode!, request.LotCode, false, ct)).TryGet(out var at, out var problem))
        {
            return problem;
        }

        var (card, quantity, lot) = (request.JobCardNumber!.Value, request.Quantity!.Value, at.Lot?.Id);
        var issued = -await db.StockMovements
            .Where(m => m.PartId == at.Part.Id && m.JobCardNumber == card && m.LotId == lot && (m.Kind == MovementKind.Issued || m.Kind == MovementKind.Returned))
            .SumAsync(m => m.OnHandChange, ct);
        if (quantity > issued)
        {
            return Problem.Impossible("not-issued", "quantity",
                $"quantity is {at.Say(quantity)}, but {(issued <= 0 ? "none" : at.Say(issued))} of {at.Name} is out for job card {card}; what came otherwise is goods in.");
        }

        if ((PlacesByCode.RefusePutting(at.Place, "placeCode") ?? at.RefuseBroken(quantity)) is { } refused)
        {
            return refused;
        }

        db.StockMovements.Add(at.Movement(MovementKind.Returned, quantity, actor, clock.GetCurrentInstant(), card: card));
        await db.SaveChangesAsync(ct);
        return new Answer(at.Part.Code, at.Name, at.Part.Unit, quantity, at.Place.Name, at.OnHand + quantity);
    }
}
