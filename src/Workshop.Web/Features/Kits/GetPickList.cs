using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Kits;

/// <summary>
/// The walk through the stores for one card: what is to be taken from which place, of which lot, in the order of the places; what
/// is on its bench already; and what is not there.
/// </summary>
public static class GetPickList
{
    public sealed record Request(int Number);

    /// <param name="ToPick">In walking order.</param>
    /// <param name="OnBench">Taken for this card, less what came back.</param>
    /// <param name="Missing">What the card cannot have now.</param>
    public sealed record Answer(
        int JobCardNumber, JobCardState State, IReadOnlyList<Row> ToPick, IReadOnlyList<BenchRow> OnBench, IReadOnlyList<MissingRow> Missing);

    /// <param name="PartCode">Of the part that is taken: of a substitution, what stands in.</param>
    /// <param name="For">The part that it stands in for.</param>
    /// <param name="Lot">As the maker marks it.</param>
    /// <param name="Packages">In whole packages; absent where it comes singly.</param>
    /// <param name="Why">In one sentence.</param>
    public sealed record Row(
        Guid PlaceId, string PlaceCode, string Place, string PartCode, string Name, string? For, Guid? LotId, string? Lot, LocalDate? ExpiresOn,
        PartUnit Unit, decimal Quantity, string? Packages, string Why);

    /// <param name="Beyond">Of it, more than the kit wants: it goes back to its place.</param>
    public sealed record BenchRow(
        Guid PlaceId, string Place, string PartCode, string Name, Guid? LotId, string? Lot, PartUnit Unit, decimal Quantity, decimal Beyond);

    public sealed record MissingRow(string PartCode, string? Name, PartUnit Unit, decimal Quantity, string Sentence, IReadOnlyList<KitOnShelf.OtherPart> Alternatives);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        (await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem) ? await Read(db, open, clock, ct) : problem;

    internal static async Task<Answer> Read(WorkshopDbContext db, OpenCard open, IClock clock, CancellationToken ct)
    {
        var number = open.Card.Number;
        var visit = await KitCase.OfCard(db, open, clock, ct);
        var wanted = visit.Wanted;
        var parts = await Shelves.Read(db, [.. wanted.Keys.Union(await Shelves.TouchedBy(db, number, ct))], number, visit.UsedOn, ct);
        var alternatives = await Alternatives.Read(db, parts.Keys.ToList(), visit.UsedOn, ct);
        var names = await ShelfNames.Read(db, parts.Values, ct);
        var lines = visit.Kit.Lines.Where(l => l.Part is not null).ToLookup(l => visit.TakenFor(l)!.Id);
        var (rows, bench, missing) = (new List<(int Walk, Row Row)>(), new List<BenchRow>(), new List<MissingRow>());
        var isOpen = open.Card.State is JobCardState.Booked or JobCardState.CheckedIn;
        foreach (var part in parts.Values.OrderBy(p => p.Part.Code, StringComparer.Ordinal))
        {
            var remaining = isOpen ? Math.Max(0, wanted.GetValueOrDefault(part.Part.Id) - part.IssuedToCard) : 0;
            var (changes, notThere) = StockAllocation.Pick(remaining, part.Shelves);
            rows.AddRange(changes.GroupBy(c => (c.PlaceId, c.LotId)).Select(g => RowOf(part, g.Key, -g.Sum(c => c.OnHandChange), lines[part.Part.Id], names)));
            bench.AddRange(BenchOf(part, wanted.GetValueOrDefault(part.Part.Id), names));
            if (notThere > 0)
            {
                missing.Add(new MissingRow(
                    part.Part.Code, part.Part.Name, part.Part.Unit, notThere, NotThere.Sentence(part, notThere, names, alternatives[part.Part.Id]),
                    [.. alternatives[part.Part.Id].Select(NotThere.Other)]));
            }
        }

        missing.AddRange(visit.Kit.Lines.Where(l => l.Part is null && isOpen).Select(l => new MissingRow(
            l.PartCode, null, PartUnit.Piece, l.Wanted, $"{l.PartCode}: {PartUnit.Piece.Say(l.Wanted)} wanted, but the stores know no such part.", [])));
        return new Answer(
            number, open.Card.State,
            [.. rows.OrderBy(r => r.Walk).ThenBy(r => r.Row.Place, StringComparer.Ordinal).ThenBy(r => r.Row.PartCode, StringComparer.Ordinal).Select(r => r.Row)],
            bench, missing);
    }

    private static (int, Row) RowOf(
        PartOnShelves part, (Guid PlaceId, Guid? LotId) at, decimal quantity, IEnumerable<KitLine> lines, ShelfNames names)
    {
        var (place, lot) = (names.Places[at.PlaceId], at.LotId is { } id ? names.Lots[id] : null);
        var standsInFor = lines.Where(l => l.Part!.Id != part.Part.Id).Select(l => l.Part!.Name).ToList();
        return (place.WalkOrder, new Row(
            place.Id, place.Code, place.Name, part.Part.Code, part.Part.Name, standsInFor.Count == 0 ? null : KitWords.And(standsInFor),
            at.LotId, lot?.Code, lot?.ExpiresOn, part.Part.Unit, quantity, Packages.Of(quantity, part.Part)?.InWords(part.Part),
            string.Join("; ", lines.Select(l => l.Sentence))));
    }

    private static IEnumerable<BenchRow> BenchOf(PartOnShelves part, decimal wanted, ShelfNames names)
    {
        var beyond = StockAllocation.Return(part.IssuedToCard - wanted, part.Shelves);
        return part.Shelves.Where(s => s.IssuedToCard > 0).Select(s => new BenchRow(
            s.PlaceId, names.Places[s.PlaceId].Name, part.Part.Code, part.Part.Name, s.LotId,
            s.LotId is { } lot ? names.Lots[lot].Code : null, part.Part.Unit, s.IssuedToCard,
            beyond.Where(c => c.PlaceId == s.PlaceId && c.LotId == s.LotId).Sum(c => c.OnHandChange)));
    }
}

/// <summary>Places and lots of shelves, for words.</summary>
internal sealed record ShelfNames(IReadOnlyDictionary<Guid, StoragePlace> Places, IReadOnlyDictionary<Guid, StockLot> Lots)
{
    public static async Task<ShelfNames> Read(WorkshopDbContext db, IEnumerable<PartOnShelves> parts, CancellationToken ct)
    {
        var shelves = parts.SelectMany(p => p.Shelves).ToList();
        var (places, lots) = (shelves.Select(s => s.PlaceId).Distinct().ToList(), shelves.Select(s => s.LotId).OfType<Guid>().Distinct().ToList());
        return new ShelfNames(
            await db.StoragePlaces.AsNoTracking().Where(p => places.Contains(p.Id)).ToDictionaryAsync(p => p.Id, ct),
            await db.StockLots.AsNoTracking().Where(l => lots.Contains(l.Id)).ToDictionaryAsync(l => l.Id, ct));
    }
}
