using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// Two parts were found to be one: all that lies under the one, and whoever has reserved it, goes to the other by rows of the ledger,
/// and what points at it follows (<see cref="MergedReferences"/>). Its code goes on to mean the other one; its own ledger stays.
/// </summary>
public static class MergePart
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public string Code { get; init; } = "";

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>The code of the part that it is.</summary>
        public string? Into { get; init; }
    }

    /// <param name="OnHand">What went over.</param>
    /// <param name="Cards">Job cards whose reservation went over with it.</param>
    public sealed record Answer(string Code, string Into, string Name, PartUnit Unit, decimal OnHand, IReadOnlyList<int> Cards);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Into).IsGiven("the code of the part that it is").IsAtMost(Limits.Code);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartsByCode.Find(db, request.Into!, "into", ct)).TryGet(out var other, out var problem))
        {
            return problem;
        }

        // For update, both in one order: a pick, a count or a receipt of either waits, or is waited for.
        await db.Database.ExecuteSqlAsync(
            $"select 1 from parts where code = {request.Code} or id = {other.Id} order by id for update", ct);
        other = await db.Parts.AsNoTracking().SingleAsync(p => p.Id == other.Id, ct);
        if (other.MergedIntoId is not null)
        {
            return Problem.Conflict("part-merged", $"{other.Code} was merged into another part a moment ago; do it again.");
        }

        if (!(await PartToChange.Find(db, request.Code, request.RowVersion!.Value, ct)).TryGet(out var found, out problem))
        {
            return problem;
        }

        var part = found.Part;
        if ((MergeRules.Refuse(part, other) ?? await RefuseWhileCounted(db, part, ct) ?? await MergedReferences.Refuse(db, part, other, ct)) is { } refused)
        {
            return refused;
        }

        var now = clock.GetCurrentInstant();
        if (!(await Rows(db, part, other, actor, now, ct)).TryGet(out var rows, out problem))
        {
            return problem;
        }

        db.StockMovements.AddRange(rows);
        await db.SaveChangesAsync(ct);
        await MergedReferences.Follow(db, part.Id, other.Id, ct);
        return new Answer(
            part.Code, other.Code, other.Name, other.Unit, rows.Where(r => r.OnHandChange > 0).Sum(r => r.OnHandChange),
            [.. rows.Select(r => r.JobCardNumber).OfType<int>().Distinct().Order()]);
    }

    private static async Task<Problem?> RefuseWhileCounted(WorkshopDbContext db, Part part, CancellationToken ct)
    {
        var place = await (
            from line in db.StockCountLines
            join count in db.StockCounts on line.CountId equals count.Id
            where line.PartId == part.Id && count.ClosedAt == null
            join at in db.StoragePlaces on count.PlaceId equals at.Id
            select at.Name).FirstOrDefaultAsync(ct);
        return place is null ? null : Problem.Conflict("counted-now",
            $"{part.Name} is counted in a count of {place} that is open; close it or give it up first.");
    }

    /// <summary>Of each place and lot: what leaves the one part and comes to the other, the goods and each card's reservation.</summary>
    private static async Task<Outcome<IReadOnlyList<StockMovement>>> Rows(
        WorkshopDbContext db, Part part, Part other, Actor actor, Instant now, CancellationToken ct)
    {
        var balances = await db.StockBalances.AsNoTracking()
            .Where(b => b.PartId == part.Id && (b.OnHand != 0 || b.Reserved != 0)).ToListAsync(ct);
        if (!(await Lots(db, balances, other, now, ct)).TryGet(out var lots, out var problem))
        {
            return problem;
        }

        var places = await db.StoragePlaces.AsNoTracking().ToDictionaryAsync(p => p.Id, ct);
        var ids = balances.Select(b => b.LotId).OfType<Guid>().ToList();
        var known = await db.StockLots.AsNoTracking().Where(l => ids.Contains(l.Id)).ToDictionaryAsync(l => l.Id, ct);
        var rows = new List<StockMovement>();
        foreach (var balance in balances)
        {
            var old = new StockAt(part, places[balance.PlaceId], balance.LotId is { } lot ? known[lot] : null, balance.OnHand, balance.Reserved);
            var become = old with { Part = other, Lot = balance.LotId is { } id ? lots[id] : null };
            if (balance.OnHand != 0)
            {
                rows.Add(old.Movement(MovementKind.Merged, -balance.OnHand, actor, now));
                rows.Add(become.Movement(MovementKind.Merged, balance.OnHand, actor, now));
            }

            foreach (var card in await old.Held(db, ct))
            {
                rows.Add(old.Movement(MovementKind.Merged, 0, actor, now, -card.Quantity, card.CardNumber));
                rows.Add(become.Movement(MovementKind.Merged, 0, actor, now, card.Quantity, card.CardNumber));
            }
        }

        return rows;
    }

    /// <summary>The lot of the other part that each lot becomes: the one of the same code, or a new one.</summary>
    private static async Task<Outcome<IReadOnlyDictionary<Guid, StockLot>>> Lots(
        WorkshopDbContext db, IReadOnlyList<StockBalance> balances, Part other, Instant now, CancellationToken ct)
    {
        var ids = balances.Select(b => b.LotId).OfType<Guid>().Distinct().ToList();
        var standing = await db.StockLots.AsNoTracking().Where(l => l.PartId == other.Id).ToDictionaryAsync(l => l.Code, StringComparer.Ordinal, ct);
        var become = new Dictionary<Guid, StockLot>();
        foreach (var lot in await db.StockLots.AsNoTracking().Where(l => ids.Contains(l.Id)).ToListAsync(ct))
        {
            if (!standing.TryGetValue(lot.Code, out var same))
            {
                same = new StockLot { Id = NewId.At(now), PartId = other.Id, Code = lot.Code, ExpiresOn = lot.ExpiresOn, ReceivedOn = lot.ReceivedOn };
                db.StockLots.Add(same);
            }
            else if (same.ExpiresOn != lot.ExpiresOn)
            {
                return Problem.Conflict("lots-differ",
                    $"Both parts have a lot {lot.Code}, with different last days ({Say(lot.ExpiresOn)} and {Say(same.ExpiresOn)}); use up or scrap one of them first.");
            }

            become.Add(lot.Id, same);
        }

        await db.SaveChangesAsync(ct);
        return become;
    }

    private static string Say(LocalDate? day) => day is { } given ? Days.Write(given) : "none";
}
