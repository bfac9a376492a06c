using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>A count with its lines: of each part and lot the last one; and, while it is open, what would follow from closing it.</summary>
public static class GetCount
{
    private const int MostUncounted = 200;

    public sealed record Request(Guid Id);

    /// <param name="Uncounted">What the books have at the place and nobody counted; it stays as it is.</param>
    public sealed record Answer(
        Guid Id, string PlaceCode, string Place, string StartedBy, Instant StartedAt, string? ClosedBy, Instant? ClosedAt, bool GivenUp,
        IReadOnlyList<Line> Lines, IReadOnlyList<Uncounted> Uncounted, int UncountedInAll, uint RowVersion) : IHasVersion;

    /// <param name="Expected">What the books said as it was counted.</param>
    /// <param name="After">What will be there once the count is closed; absent once it is.</param>
    /// <param name="ReservedTooMuch">How much of what is reserved will not be there then.</param>
    public sealed record Line(
        Guid Id, string PartCode, string Name, PartUnit Unit, string? Lot, decimal Counted, decimal Expected, decimal Difference,
        CountDifferenceReason? Reason, string? Remark, string CountedBy, Instant CountedAt, string? ExplainedBy, decimal? After, decimal ReservedTooMuch);

    public sealed record Uncounted(string PartCode, string Name, PartUnit Unit, string? Lot, decimal OnHand);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var found = await (
            from count in db.StockCounts.AsNoTracking()
            where count.Id == request.Id
            join place in db.StoragePlaces on count.PlaceId equals place.Id
            select new { count, place, Version = EF.Property<uint>(count, MappingExtensions.RowVersion) }).SingleOrDefaultAsync(ct);
        if (found is null)
        {
            return Problem.NotFound($"Count {request.Id}");
        }

        var (sheet, open) = (found.count, found.count.ClosedAt is null);
        var counted = await CountedParts.Read(db, sheet, ct);
        var people = await Names(db, sheet, counted, ct);
        var remarkIds = counted.Select(c => c.Line.RemarkId).OfType<Guid>().ToList();
        var remarks = await db.Remarks.AsNoTracking().Where(r => remarkIds.Contains(r.Id)).ToDictionaryAsync(r => r.Id, r => r.Text, ct);
        var uncounted = open ? await NotCounted(db, sheet, counted, ct) : [];
        return new Answer(
            sheet.Id, found.place.Code, found.place.Name, people[sheet.StartedBy], sheet.StartedAt,
            sheet.ClosedBy is { } closer ? people[closer] : null, sheet.ClosedAt, sheet.GivenUp,
            [.. counted.Select(c => new Line(
                c.Line.Id, c.Part.Code, c.Part.Name, c.Part.Unit, c.Lot, c.Line.Counted, c.Line.Expected, c.Difference, c.Line.Reason,
                c.Line.RemarkId is { } remark ? remarks[remark] : null, people[c.Line.CountedBy], c.Line.CountedAt,
                c.Line.ExplainedBy is { } by ? people[by] : null, open ? c.After : null, open && c.Difference < 0 ? c.ReservedTooMuch : 0))],
            [.. uncounted.Take(MostUncounted)], uncounted.Count, found.Version);
    }

    private static async Task<Dictionary<Guid, string>> Names(
        WorkshopDbContext db, StockCount count, IReadOnlyList<CountedPart> counted, CancellationToken ct)
    {
        var ids = counted.SelectMany(c => new[] { c.Line.CountedBy, c.Line.ExplainedBy }).Append(count.StartedBy).Append(count.ClosedBy)
            .OfType<Guid>().Distinct().ToList();
        return await db.People.AsNoTracking().Where(p => ids.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Name, ct);
    }

    private static async Task<IReadOnlyList<Uncounted>> NotCounted(
        WorkshopDbContext db, StockCount count, IReadOnlyList<CountedPart> counted, CancellationToken ct)
    {
        var done = counted.Select(c => (c.Line.PartId, c.Line.LotId)).ToHashSet();
        var there = await (
            from balance in db.StockBalances.AsNoTracking()
            where balance.PlaceId == count.PlaceId && balance.OnHand > 0 && balance.Thickness == null
            join part in db.Parts on balance.PartId equals part.Id
            join lot in db.StockLots on balance.LotId equals lot.Id into lots
            from lot in lots.DefaultIfEmpty()
            orderby part.Code, lot!.Code
            select new { balance.PartId, balance.LotId, Row = new Uncounted(part.Code, part.Name, part.Unit, lot.Code, balance.OnHand) }).ToListAsync(ct);
        return [.. there.Where(t => !done.Contains((t.PartId, t.LotId))).Select(t => t.Row)];
    }
}
