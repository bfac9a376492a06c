using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// What lies of one part at one place, of one lot, with whose it is; the part's row is locked. What moves, scraps, returns and counts
/// begins here.
/// </summary>
internal sealed record StockAt(Part Part, StoragePlace Place, StockLot? Lot, decimal OnHand, decimal Reserved)
{
    /// <summary>"Fork oil, lot L7".</summary>
    public string Name => Lot is null ? Part.Name : $"{Part.Name}, lot {Lot.Code}";

    public string Say(decimal quantity) => Part.Unit.Say(quantity);

    /// <param name="mustLie">Where nothing lies there of a lot that is not named, the lots that do are said.</param>
    public static async Task<Outcome<StockAt>> Locked(
        WorkshopDbContext db, string partCode, string placeCode, string? lotCode, bool mustLie, CancellationToken ct, string placeField = "placeCode")
    {
        if (!(await PartsByCode.Locked(db, partCode, "partCode", ct)).TryGet(out var part, out var problem)
            || !(await PlacesByCode.Find(db, placeCode, placeField, ct)).TryGet(out var place, out problem))
        {
            return problem;
        }

        if (part.Kind == PartKind.Shim)
        {
            return Problem.Impossible("part-is-shim", "partCode",
                $"partCode is \"{partCode}\", shims: each is moved, scrapped and counted by itself in the shim box.");
        }

        var lot = lotCode is null ? null : await db.StockLots.AsNoTracking().SingleOrDefaultAsync(l => l.PartId == part.Id && l.Code == lotCode, ct);
        if (lotCode is not null && lot is null)
        {
            return Problem.Impossible("lot-unknown", "lotCode", $"lotCode is \"{lotCode}\": no lot of {part.Name} has it.");
        }

        var balances = await db.StockBalances.AsNoTracking().Where(b => b.PartId == part.Id && b.PlaceId == place.Id).ToListAsync(ct);
        var balance = balances.SingleOrDefault(b => b.LotId == lot?.Id);
        if (mustLie && lot is null && (balance?.OnHand ?? 0) == 0 && balances.Any(b => b.OnHand > 0))
        {
            var ids = balances.Where(b => b.OnHand > 0).Select(b => b.LotId).ToList();
            var lots = await db.StockLots.Where(l => ids.Contains(l.Id)).OrderBy(l => l.Code).Select(l => l.Code).ToListAsync(ct);
            return Problem.Impossible("lot-missing", "lotCode", $"lotCode is empty: at {place.Name} {part.Name} lies by lot; {string.Join(" or ", lots)} is allowed.");
        }

        return new StockAt(part, place, lot, balance?.OnHand ?? 0, balance?.Reserved ?? 0);
    }

    /// <summary>Refuses a part of a piece.</summary>
    public Problem? RefuseBroken(decimal quantity, string field = "quantity") =>
        Part.Unit != PartUnit.Piece || quantity == decimal.Truncate(quantity) ? null
            : Problem.Impossible("not-whole", field, $"{field} is {Say(quantity)}: {Part.Name} comes in whole pieces.");

    /// <summary>Refuses to take more than lies there.</summary>
    public Problem? RefuseTaking(decimal quantity)
    {
        if (RefuseBroken(quantity) is { } broken)
        {
            return broken;
        }

        var sentence = $"quantity is {Say(quantity)}, but at {Place.Name} there are {Say(OnHand)} of {Name}; at most that is allowed.";
        return quantity <= OnHand ? null : Problem.Conflict("stock-short", sentence) with { Faults = [new FieldFault("quantity", sentence)] };
    }

    /// <summary>Whose reservations lie here.</summary>
    public async Task<IReadOnlyList<HeldForCard>> Held(WorkshopDbContext db, CancellationToken ct)
    {
        var (part, place, lot) = (Part.Id, Place.Id, Lot?.Id);
        var held = await (
            from moved in db.StockMovements.AsNoTracking()
                .Where(m => m.PartId == part && m.PlaceId == place && m.LotId == lot && m.JobCardNumber != null && m.ReservedChange != 0)
                .GroupBy(m => m.JobCardNumber)
                .Where(g => g.Sum(m => m.ReservedChange) > 0)
                .Select(g => new { Number = g.Key, Quantity = g.Sum(m => m.ReservedChange) })
            join card in db.JobCards on moved.Number equals card.Number
            select new { card.Number, card.StartsAt, moved.Quantity }).ToListAsync(ct);
        return [.. held.Select(h => new HeldForCard(h.Number, h.StartsAt, h.Quantity))];
    }

    /// <summary>Reservations that must go because less will be here: those of the visits that begin last.</summary>
    public async Task<IReadOnlyList<HeldForCard>> GivingWayWhenLeft(WorkshopDbContext db, decimal left, CancellationToken ct) =>
        Reserved <= left ? [] : GivingWay.Take(Reserved - left, await Held(db, ct));

    public StockMovement Movement(MovementKind kind, decimal onHand, Actor actor, Instant now, decimal reserved = 0, int? card = null) =>
        Movement(kind, onHand, actor, now, null, reserved, card);

    public StockMovement Movement(
        MovementKind kind, decimal onHand, Actor actor, Instant now, Reasons? why, decimal reserved = 0, int? card = null) => new()
    {
        Id = NewId.At(now), PartId = Part.Id, PlaceId = Place.Id, LotId = Lot?.Id, Kind = kind, OnHandChange = onHand, ReservedChange = reserved,
        JobCardNumber = card, ScrapReason = why?.Scrap, ReasonRemarkId = why?.Remark, CountId = why?.Count, MovedBy = actor.PersonId, MovedAt = now,
    };

    /// <summary>Why something moved, where it is said.</summary>
    public sealed record Reasons(Domain.Shims.ScrapReason? Scrap = null, Guid? Remark = null, Guid? Count = null);
}

/// <summary>A card whose reservation gave way, for an answer.</summary>
public sealed record CardThatLost(int JobCardNumber, decimal Quantity)
{
    internal static IReadOnlyList<CardThatLost> Of(IEnumerable<HeldForCard> cards) => [.. cards.Select(c => new CardThatLost(c.CardNumber, c.Quantity))];

    /// <summary>"Job card 1012 lost 2 of what it had reserved."</summary>
    public static string Say(IReadOnlyList<CardThatLost> cards, PartUnit unit) =>
        string.Concat(cards.Select(c => $" Job card {c.JobCardNumber} lost {unit.Say(c.Quantity)} of what it had reserved; look at its kit."));
}
