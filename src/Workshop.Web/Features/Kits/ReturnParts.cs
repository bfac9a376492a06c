using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

/// <summary>Puts back what was taken to the bench of a card and not used: each piece to the place and lot it came from.</summary>
public static class ReturnParts
{
    private const decimal SmallestQuantity = 0.0001m;
    private const decimal LargestQuantity = 100_000;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public string? PartCode { get; init; }

        /// <summary>Absent: wherever it came from.</summary>
        public Guid? PlaceId { get; init; }

        public Guid? LotId { get; init; }

        /// <summary>In the part's unit; absent: all of it.</summary>
        public decimal? Quantity { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the code of the part that goes back").IsAtMost(Limits.Name);
            RuleFor(r => r.Quantity).IsWithin(SmallestQuantity, LargestQuantity, 4, "pieces or ml");
        }
    }

    public static async Task<Outcome<GetPickList.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PickParts.ForPicking(db, request.Number, ct)).TryGet(out var open, out var problem)
            || !(await PickParts.Find(db, request.PartCode!, ct)).TryGet(out var named, out problem))
        {
            return problem;
        }

        var usedOn = await KitCase.UsedOnDay(db, open.Card, clock, ct);
        var part = (await Shelves.ReadToChange(db, [named.Id], request.Number, usedOn, ct))[named.Id];
        var reach = part.Shelves.Where(s => (request.PlaceId ?? s.PlaceId) == s.PlaceId && (request.LotId is null || request.LotId == s.LotId)).ToList();
        var there = reach.Sum(s => s.IssuedToCard);
        var quantity = request.Quantity ?? there;
        if (quantity == 0 || quantity > there)
        {
            return Problem.Conflict("not-on-bench",
                $"{part.Part.Name} ({part.Part.Code}): {part.Part.Unit.Say(there)} of it from there on the bench of job card {request.Number}, so {(there == 0 ? "nothing goes back" : $"at most {part.Part.Unit.Say(there)} goes back")}.");
        }

        if (part.Part.Unit == PartUnit.Piece && quantity != decimal.Truncate(quantity))
        {
            return Problem.Impossible("quantity-broken", "quantity", $"quantity is {quantity:0.####}: {part.Part.Name} comes in whole pieces.");
        }

        KitReservations.Add(db, request.Number, StockAllocation.Return(quantity, reach), actor, clock);
        await db.SaveChangesAsync(ct);
        return await GetPickList.Read(db, open, clock, ct);
    }
}
