using NodaTime;
using Workshop.Domain;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Kits;

/// <summary>
/// Holds the kit of a visit in the stores, lets it go, issues it and settles it. Called by the use cases that book, change,
/// begin, cancel and sign off a visit, inside their transaction; the card and its items are saved by then. Each saves what it adds.
/// </summary>
internal static class KitReservations
{
    /// <summary>
    /// Brings what is reserved for the card to its kit as it now is, less what is on its bench: as much as is free, never more.
    /// May be called whenever the items change or goods come in; when nothing is to change, nothing is written.
    /// </summary>
    public static async Task Reserve(WorkshopDbContext db, int number, Actor actor, IClock clock, CancellationToken ct)
    {
        var open = (await OpenCard.Find(db, number, ct)).Value;
        var visit = await KitCase.OfCard(db, open, clock, ct);
        var wanted = visit.Wanted;
        foreach (var (id, part) in await ToChange(db, number, wanted.Keys, visit.UsedOn, ct))
        {
            Add(db, number, StockAllocation.Reserve(Math.Max(0, wanted.GetValueOrDefault(id) - part.IssuedToCard), part.Shelves), actor, clock);
        }

        await db.SaveChangesAsync(ct);
    }

    /// <summary>
    /// After visits were moved: whoever holds of a lot that now ends before its work lets go of it and takes what lasts. Cards that hold
    /// nothing that ends are left as they are.
    /// </summary>
    public static async Task ReserveWhatLasts(WorkshopDbContext db, IReadOnlyCollection<int> numbers, Actor actor, IClock clock, CancellationToken ct)
    {
        foreach (var number in await OpenVisits.HoldingWhatEnds(db, numbers, ct))
        {
            await Reserve(db, number, actor, clock, ct);
        }
    }

    /// <summary>The visit does not take place: lets go whatever the card holds, and what is on its bench goes back.</summary>
    public static async Task Release(WorkshopDbContext db, int number, Actor actor, IClock clock, CancellationToken ct)
    {
        var open = (await OpenCard.Find(db, number, ct)).Value;
        foreach (var part in (await ToChange(db, number, [], await KitCase.UsedOnDay(db, open.Card, clock, ct), ct)).Values)
        {
            Add(db, number, StockAllocation.Settle(0, part.Shelves).Changes, actor, clock);
        }

        await db.SaveChangesAsync(ct);
    }

    /// <summary>The work begins: what is reserved and lies there goes to the bench. Answers what is short, in sentences.</summary>
    public static async Task<IReadOnlyList<string>> IssueReserved(WorkshopDbContext db, OpenCard open, Actor actor, IClock clock, CancellationToken ct)
    {
        var number = open.Card.Number;
        var visit = await KitCase.OfCard(db, open, clock, ct);
        var wanted = visit.Wanted;
        var shorts = new List<string>();
        foreach (var (id, part) in (await ToChange(db, number, wanted.Keys, visit.UsedOn, ct)).OrderBy(p => p.Value.Part.Code, StringComparer.Ordinal))
        {
            var (changes, _) = StockAllocation.Pick(Math.Max(0, wanted.GetValueOrDefault(id) - part.IssuedToCard), part.Shelves);
            Add(db, number, changes, actor, clock);
            var after = StockAllocation.After(part.Shelves, changes);
            Add(db, number, StockAllocation.Reserve(Math.Max(0, wanted.GetValueOrDefault(id) - after.Sum(s => s.IssuedToCard)), after), actor, clock);
            if (wanted.GetValueOrDefault(id) - after.Sum(s => s.IssuedToCard) is > 0 and var missing)
            {
                shorts.Add($"{part.Part.Name}: {part.Part.Unit.Say(missing)} short.");
            }
        }

        await db.SaveChangesAsync(ct);
        return shorts;
    }

    /// <summary>
    /// Squares the card with the stores: what was used beyond what is on its bench is taken, what was not used goes back to its
    /// place, the rest of what it holds is let go. Refused as a whole when the stores have less of a part than was used.
    /// </summary>
    /// <param name="used">Quantity by part code, as specification or stores name it; each above zero.</param>
    public static async Task<Problem?> Settle(
        WorkshopDbContext db, OpenCard open, IReadOnlyDictionary<string, decimal> used, Actor actor, IClock clock, CancellationToken ct)
    {
        var number = open.Card.Number;
        var visit = await KitCase.OfCard(db, open, clock, ct);
        var known = await Stores.PartsByCode.Read(db, [.. used.Keys], ct);
        var faults = used.Where(u => !known.ContainsKey(u.Key)).Select(u => new FieldFault($"kit.{u.Key}",
            $"{u.Key}: {PartUnit.Piece.Say(u.Value)} used, but the stores know no such part; enter it and its stock there first.")).ToList();
        var byPart = used.Where(u => known.ContainsKey(u.Key))
            .GroupBy(u => visit.TakenFor(known[u.Key]).Id, u => u.Value).ToDictionary(g => g.Key, g => g.Sum());
        foreach (var (id, part) in (await ToChange(db, number, byPart.Keys, visit.UsedOn, ct)).OrderBy(p => p.Value.Part.Code, StringComparer.Ordinal))
        {
            var quantity = byPart.GetValueOrDefault(id);
            var (changes, missing) = StockAllocation.Settle(quantity, part.Shelves);
            if (missing > 0)
            {
                faults.Add(new FieldFault($"kit.{part.Part.Code}", Missing(part, quantity)));
                continue;
            }

            Add(db, number, changes, actor, clock);
        }

        if (faults.Count > 0)
        {
            return new Problem(ProblemKind.Conflict, "stock-short", string.Join(" ", faults.Select(f => f.Sentence))) { Faults = faults };
        }

        await db.SaveChangesAsync(ct);
        return null;
    }

    /// <summary>Writes movements of a card; saves nothing.</summary>
    public static void Add(WorkshopDbContext db, int number, IReadOnlyList<StockChange> changes, Actor actor, IClock clock) =>
        db.StockMovements.AddRange(changes.Select(change => new StockMovement
        {
            Id = NewId.At(clock),
            PartId = change.PartId,
            PlaceId = change.PlaceId,
            LotId = change.LotId,
            Kind = change.Kind,
            OnHandChange = change.OnHandChange,
            ReservedChange = change.ReservedChange,
            JobCardNumber = number,
            MovedBy = actor.PersonId,
            MovedAt = clock.GetCurrentInstant(),
        }));

    private static string Missing(PartOnShelves part, decimal used)
    {
        var bench = part.IssuedToCard > 0 ? $", {part.Part.Unit.Say(part.IssuedToCard)} on the bench and" : ", but only";
        var expired = part.Expired > 0 ? $" and {part.Part.Unit.Say(part.Expired)} past its day" : "";
        return $"{part.Part.Name} ({part.Part.Code}): {part.Part.Unit.Say(used)} used{bench} {part.Part.Unit.Say(part.OnHand - part.Expired)} in the stores{expired}; "
            + "enter the delivery or the count there first.";
    }

    private static async Task<IReadOnlyDictionary<Guid, PartOnShelves>> ToChange(
        WorkshopDbContext db, int number, IEnumerable<Guid> parts, LocalDate usedOn, CancellationToken ct) =>
        await Shelves.ReadToChange(db, [.. parts.Union(await Shelves.TouchedBy(db, number, ct))], number, usedOn, ct);
}
