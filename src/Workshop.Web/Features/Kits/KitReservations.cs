using NodaTime;
using Workshop.Domain;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Kits;

/// <summary>
/// Holds the kit of a visit in the stores, lets it go, and takes it out. Called by the use cases that book, change, cancel and
/// sign off a visit, inside their transaction; the card and its items are saved by then. Each saves what it adds.
/// </summary>
internal static class KitReservations
{
    /// <summary>
    /// Brings what is reserved for the card to its kit as it now is: as much as is free, never more. May be called whenever
    /// the items change or goods come in; when nothing is to change, nothing is written.
    /// </summary>
    public static async Task Reserve(WorkshopDbContext db, int number, Actor actor, IClock clock, CancellationToken ct)
    {
        var open = (await OpenCard.Find(db, number, ct)).Value;
        var wanted = Kit.Of(open.Specification, open.ItemsUnderWay, open.ItemsHeldReady).Lines
            .ToDictionary(l => l.PartCode, l => l.Needed + l.HaveReady, StringComparer.Ordinal);
        await ReserveQuantities(db, number, wanted, actor, clock, ct);
    }

    /// <summary>Lets go whatever the card holds: the visit is cancelled.</summary>
    public static Task Release(WorkshopDbContext db, int number, Actor actor, IClock clock, CancellationToken ct) =>
        ReserveQuantities(db, number, new Dictionary<string, decimal>(), actor, clock, ct);

    /// <summary>
    /// Takes what was used out of the stores and lets go the rest of what the card holds. Refused as a whole when the stores
    /// have less of a part than was used.
    /// </summary>
    /// <param name="used">Quantity by part code, each above zero.</param>
    public static async Task<Problem?> Consume(
        WorkshopDbContext db, int number, IReadOnlyDictionary<string, decimal> used, Actor actor, IClock clock, CancellationToken ct)
    {
        var codes = used.Keys.Union(await Shelves.CodesHeld(db, number, ct)).ToList();
        var parts = await Shelves.ReadToChange(db, codes, number, ct);
        var faults = new List<FieldFault>();
        foreach (var code in codes.Order(StringComparer.Ordinal))
        {
            var quantity = used.GetValueOrDefault(code);
            if (!parts.TryGetValue(code, out var part))
            {
                faults.Add(new FieldFault($"kit.{code}",
                    $"{code}: {Say(quantity)} used, but the stores know no such part; enter it and its stock there first."));
                continue;
            }

            var (changes, missing) = StockAllocation.Issue(quantity, part.Shelves);
            if (missing > 0)
            {
                faults.Add(new FieldFault($"kit.{code}",
                    $"{part.Part.Name} ({code}): {Say(quantity, part.Part.Unit)} used, but only {Say(part.OnHand, part.Part.Unit)} in the stores; enter the delivery or the count there first."));
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

    private static async Task ReserveQuantities(
        WorkshopDbContext db, int number, Dictionary<string, decimal> wanted, Actor actor, IClock clock, CancellationToken ct)
    {
        var codes = wanted.Keys.Union(await Shelves.CodesHeld(db, number, ct)).ToList();
        foreach (var (code, part) in await Shelves.ReadToChange(db, codes, number, ct))
        {
            Add(db, number, StockAllocation.Reserve(wanted.GetValueOrDefault(code), part.Shelves), actor, clock);
        }

        await db.SaveChangesAsync(ct);
    }

    private static void Add(WorkshopDbContext db, int number, IReadOnlyList<StockChange> changes, Actor actor, IClock clock) =>
        db.StockMovements.AddRange(changes.Select(change => new StockMovement
        {
            Id = NewId.At(clock),
            PartId = change.PartId,
            PlaceId = change.PlaceId,
            Kind = change.Kind,
            OnHandChange = change.OnHandChange,
            ReservedChange = change.ReservedChange,
            JobCardNumber = number,
            MovedBy = actor.PersonId,
            MovedAt = clock.GetCurrentInstant(),
        }));

    private static string Say(decimal quantity, PartUnit unit = PartUnit.Piece) =>
        unit == PartUnit.Millilitre ? $"{quantity:0.####} ml" : $"{quantity:0.####}";
}
