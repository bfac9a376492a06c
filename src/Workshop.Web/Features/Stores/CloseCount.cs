using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// The differences of a count are booked against what is there now, so that what came or went since stays booked; or the count is
/// given up, and nothing is. Where less is there than is reserved, the visits that begin last lose their reservation, and the answer
/// names them.
/// </summary>
public static class CloseCount
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid CountId { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>Ends it without a movement.</summary>
        public bool GiveUp { get; init; }
    }

    /// <param name="Differences">Parts whose books were changed.</param>
    public sealed record Answer(Guid Id, string Place, int Lines, int Differences, IReadOnlyList<Lost> CardsThatLost, uint RowVersion) : IHasVersion;

    public sealed record Lost(string PartCode, string Name, PartUnit Unit, CardThatLost Card);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCount.Locked(db, request.CountId, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var (lines, differences, lost) = (0, 0, new List<Lost>());
        if (!request.GiveUp)
        {
            // The parts first, in one order, as whoever picks does; what lies there is read after that.
            await db.Database.ExecuteSqlAsync(
                $"""
                 select 1 from parts where id in (select part_id from stock_count_lines where count_id = {open.Count.Id})
                 order by id for no key update
                 """, ct);
            var counted = await CountedParts.Read(db, open.Count, ct);
            if (CountSheet.Refuse(counted) is { } refused)
            {
                return refused;
            }

            (lines, differences) = (counted.Count, counted.Count(c => c.Difference != 0));
            foreach (var part in counted.Where(c => c.Difference != 0))
            {
                lost.AddRange(await Book(db, open, part, actor, clock.GetCurrentInstant(), ct));
            }
        }

        (open.Count.ClosedBy, open.Count.ClosedAt, open.Count.GivenUp) = (actor.PersonId, clock.GetCurrentInstant(), request.GiveUp);
        var version = open.Changed(db, request.RowVersion);
        await db.SaveChangesAsync(ct);
        return new Answer(open.Count.Id, open.Place.Name, lines, differences, lost, version.CurrentValue);
    }

    private static async Task<IEnumerable<Lost>> Book(
        WorkshopDbContext db, OpenCount open, CountedPart part, Actor actor, Instant now, CancellationToken ct)
    {
        var lot = part.Line.LotId is { } id ? await db.StockLots.AsNoTracking().SingleAsync(l => l.Id == id, ct) : null;
        var at = new StockAt(part.Part, open.Place, lot, part.OnHand, part.Reserved);
        db.StockMovements.Add(at.Movement(
            MovementKind.Counted, part.Difference, actor, now, new StockAt.Reasons(Remark: part.Line.RemarkId, Count: open.Count.Id)));

        // Only a difference that takes something away can take it from a card.
        var losing = part.Difference < 0 ? await at.GivingWayWhenLeft(db, part.After, ct) : [];
        db.StockMovements.AddRange(losing.Select(c => at.Movement(
            MovementKind.Released, 0, actor, now, new StockAt.Reasons(Count: open.Count.Id), -c.Quantity, c.CardNumber)));
        return CardThatLost.Of(losing).Select(card => new Lost(part.Part.Code, part.Name, part.Part.Unit, card));
    }
}
