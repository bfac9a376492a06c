using Microsoft.EntityFrameworkCore;
using Workshop.Domain;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;

namespace Workshop.Web.Features.Shims;

/// <summary>The shims of one engine model's part in the stores, by measured thickness; and what one card takes and brings.</summary>
internal sealed class ShimBox
{
    private readonly VisitEntry entry;
    private readonly ShimRange range;
    private readonly Part? part;
    private readonly List<(StockBalance Balance, decimal Free)> shelves;
    private readonly Guid? home;
    private readonly List<StockMovement> ofTheCard;

    private ShimBox(VisitEntry entry, ShimRange range, Part? part, List<StockBalance> balances, Guid? home, List<StockMovement> ofTheCard)
    {
        (this.entry, this.range, this.part, this.home, this.ofTheCard) = (entry, range, part, home, ofTheCard);
        shelves = [.. balances.Select(b => (b, b.OnHand - b.Reserved))];
    }

    /// <summary>What may be taken, for a plan.</summary>
    public static async Task<IReadOnlyList<BoxShim>> Read(WorkshopDbContext db, ShimRange range, CancellationToken ct)
    {
        var balances = await Balances(db, range.PartCode).ToListAsync(ct);
        return [.. balances.Where(b => b.Thickness is not null && b.OnHand - b.Reserved >= 1)
            .Select(b => new BoxShim(b.Thickness!.Value, b.Condition, (int)(b.OnHand - b.Reserved)))];
    }

    /// <summary>The same for a write: the part's row is locked first, so that two cards never take the same shim.</summary>
    public static async Task<ShimBox> ReadToChange(VisitEntry entry, ShimRange range, CancellationToken ct)
    {
        var db = entry.Db;
        await db.Database.ExecuteSqlAsync($"select 1 from parts where code = {range.PartCode} for no key update", ct);
        var part = await db.Parts.AsNoTracking().SingleOrDefaultAsync(p => p.Code == range.PartCode, ct);
        var balances = await Balances(db, range.PartCode).ToListAsync(ct);
        var home = balances.GroupBy(b => b.PlaceId).OrderByDescending(g => g.Sum(b => b.OnHand)).ThenBy(g => g.Key)
            .Select(g => (Guid?)g.Key).FirstOrDefault();
        var number = entry.Open.Card.Number;
        var ofTheCard = part is null
            ? []
            : await db.StockMovements.AsNoTracking().Where(m => m.JobCardNumber == number && m.PartId == part.Id).ToListAsync(ct);
        return new ShimBox(entry, range, part, balances, home, ofTheCard);
    }

    /// <summary>Takes one of this thickness; a new one before a used one.</summary>
    public void Issue(string field, ShimThickness thickness)
    {
        var index = Enumerable.Range(0, shelves.Count)
            .Where(i => shelves[i].Balance.Thickness == thickness && shelves[i].Free >= 1)
            .OrderBy(i => shelves[i].Balance.Condition).ThenByDescending(i => shelves[i].Free)
            .Select(i => (int?)i).FirstOrDefault();
        if (index is not { } shelf)
        {
            entry.AddShortage(field, $"{field} is {thickness}: the box holds none ({range.PartCode}). {Neighbours(thickness)}");
            return;
        }

        var balance = shelves[shelf].Balance;
        shelves[shelf] = (balance, shelves[shelf].Free - 1);
        Move(MovementKind.Issued, -1, balance.PlaceId, thickness, balance.Condition);
    }

    /// <summary>
    /// Puts in what came out: a shim found in the engine is a used one; one that this card took out goes back as what it was.
    /// </summary>
    public void TakeIn(string field, ShimThickness thickness, bool wasFittedHere)
    {
        if (part is null || home is not { } place)
        {
            entry.AddShortage(field, $"{field}: the stores have no place for {range.PartCode}; enter the part and its place there first.");
            return;
        }

        var issued = wasFittedHere
            ? ofTheCard.Where(m => m.Thickness == thickness && m.Kind is MovementKind.Issued or MovementKind.Returned)
                .GroupBy(m => (m.PlaceId, m.Condition)).Where(g => g.Sum(m => m.OnHandChange) < 0).Select(g => g.Key).ToList()
            : [];
        if (issued.Count > 0)
        {
            Move(MovementKind.Returned, 1, issued[0].PlaceId, thickness, issued[0].Condition);
        }
        else
        {
            Move(MovementKind.CameOut, 1, place, thickness, StockCondition.Used);
        }
    }

    private static IQueryable<StockBalance> Balances(WorkshopDbContext db, string partCode) =>
        from balance in db.StockBalances.AsNoTracking()
        join part in db.Parts on balance.PartId equals part.Id
        where part.Code == partCode
        orderby balance.Id
        select balance;

    private void Move(MovementKind kind, decimal change, Guid place, ShimThickness thickness, StockCondition condition)
    {
        var movement = new StockMovement
        {
            Id = NewId.At(entry.Now),
            PartId = part!.Id,
            PlaceId = place,
            Thickness = thickness,
            Condition = condition,
            Kind = kind,
            OnHandChange = change,
            ReservedChange = 0,
            JobCardNumber = entry.Open.Card.Number,
            MovedBy = entry.Actor.PersonId,
            MovedAt = entry.Now,
        };
        entry.Db.StockMovements.Add(movement);
        ofTheCard.Add(movement);
    }

    private string Neighbours(ShimThickness thickness)
    {
        var there = shelves.Where(s => s.Free >= 1 && s.Balance.Thickness is not null).Select(s => s.Balance.Thickness!.Value).ToList();
        var near = new[]
        {
            there.Where(t => t < thickness).Select(t => (ShimThickness?)t).Max(),
            there.Where(t => t > thickness).Select(t => (ShimThickness?)t).Min(),
        }.OfType<ShimThickness>().Select(t => t.ToString()).ToList();
        return near.Count == 0 ? "It holds no other either." : $"Nearest in it: {string.Join(" and ", near)}.";
    }
}
