using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

/// <summary>
/// Takes a part of the kit from its place to the bench of the card: one line, tapped or scanned, or all that is there. What
/// another card holds or has just taken is refused with what is there instead.
/// </summary>
public static class PickParts
{
    private const decimal SmallestQuantity = 0.0001m;
    private const decimal LargestQuantity = 100_000;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Of a part of the pick list, or what a scanner reads on its package. Absent: all that is there.</summary>
        public string? PartCode { get; init; }

        /// <summary>Absent: where the pick list says.</summary>
        public Guid? PlaceId { get; init; }

        public Guid? LotId { get; init; }

        /// <summary>In the part's unit; absent: what the kit still wants.</summary>
        public decimal? Quantity { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsAtMost(Limits.Name);
            RuleFor(r => r.PartCode).IsGiven("the code of the part that is taken").When(r => r.Quantity is not null || r.PlaceId is not null);
            RuleFor(r => r.Quantity).IsWithin(SmallestQuantity, LargestQuantity, 4, "pieces or ml");
        }
    }

    public static async Task<Outcome<GetPickList.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await ForPicking(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (request.PartCode is null)
        {
            await KitReservations.IssueReserved(db, open, actor, clock, ct);
            return await GetPickList.Read(db, open, clock, ct);
        }

        if (!(await Find(db, request.PartCode, ct)).TryGet(out var named, out problem))
        {
            return problem;
        }

        var visit = await KitCase.OfCard(db, open, clock, ct);
        var taken = visit.TakenFor(named);
        if (!visit.Wanted.TryGetValue(taken.Id, out var wanted))
        {
            return Problem.Impossible("not-in-kit", "partCode",
                $"partCode is \"{request.PartCode}\", {named.Name}: the kit of job card {request.Number} has none; what is used beside the kit is named at sign-off.");
        }

        return await Take(request, db, open, (await Shelves.ReadToChange(db, [taken.Id], request.Number, visit.UsedOn, ct))[taken.Id], wanted, visit, actor, clock, ct) is { } refused
            ? refused
            : await GetPickList.Read(db, open, clock, ct);
    }

    private static async Task<Problem?> Take(
        Request request, WorkshopDbContext db, OpenCard open, PartOnShelves part, decimal wanted, KitCase visit, Actor actor, IClock clock, CancellationToken ct)
    {
        var remaining = Math.Max(0, wanted - part.IssuedToCard);
        if ((request.Quantity ?? remaining) is var quantity && quantity == 0)
        {
            return Problem.Conflict("picked-already",
                $"{part.Part.Name} ({part.Part.Code}): the {part.Part.Unit.Say(part.IssuedToCard)} that the kit wants are on the bench already; say a quantity to take more.");
        }

        if (part.Part.Unit == PartUnit.Piece && quantity != decimal.Truncate(quantity))
        {
            return Problem.Impossible("quantity-broken", "quantity", $"quantity is {quantity:0.####}: {part.Part.Name} comes in whole pieces.");
        }

        var reach = part.Shelves.Where(s => (request.PlaceId ?? s.PlaceId) == s.PlaceId && (request.LotId is null || request.LotId == s.LotId)).ToList();
        var (changes, missing) = StockAllocation.Pick(quantity, reach);
        if (missing > 0)
        {
            var alternatives = await Alternatives.Read(db, [part.Part.Id], visit.UsedOn, ct);
            return NotThere.Refusal(part, quantity, missing, await ShelfNames.Read(db, [part], ct), alternatives[part.Part.Id]);
        }

        KitReservations.Add(db, request.Number, changes, actor, clock);

        // What was reserved elsewhere and is not wanted any more is free again.
        var after = StockAllocation.After(part.Shelves, changes);
        KitReservations.Add(
            db, request.Number, StockAllocation.Reserve(Math.Max(0, wanted - after.Sum(s => s.IssuedToCard)), after), actor, clock);
        await db.SaveChangesAsync(ct);
        return null;
    }

    /// <summary>The part that a code means: its own, that of a part merged into it, or one on its package.</summary>
    internal static async Task<Outcome<Part>> Find(WorkshopDbContext db, string code, CancellationToken ct)
    {
        var typed = code.Trim();
        return await ReadCode.Of(db, typed, ct) switch
        {
            ScannedThing.OfPart scanned => scanned.Part,
            ScannedThing.OfPlace => Problem.Impossible("part-unknown", "partCode", $"partCode is \"{typed}\", which is a place; scan the part."),
            _ => Problem.Impossible("part-unknown", "partCode", $"partCode is \"{typed}\": no part has this code, and no package of one."),
        };
    }

    /// <summary>A card for which parts may be taken: booked or here.</summary>
    internal static async Task<Outcome<OpenCard>> ForPicking(WorkshopDbContext db, int number, CancellationToken ct) =>
        (await OpenCard.Lock(db, number, ct)).Then(open => open.Card.State is JobCardState.Booked or JobCardState.CheckedIn
            ? (Outcome<OpenCard>)open
            : Problem.Conflict("closed", $"Job card {number} is {open.Card.State.Spoken()}; its kit stays as it is."));
}
