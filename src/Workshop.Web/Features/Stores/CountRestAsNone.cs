using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>The place was gone through: whatever the books have there and nobody counted is not there.</summary>
public static class CountRestAsNone
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid CountId { get; init; }
    }

    public sealed record Answer(int Lines, uint RowVersion) : IHasVersion;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCount.Locked(db, request.CountId, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var counted = (await db.StockCountLines.AsNoTracking().Where(l => l.CountId == open.Count.Id).Select(l => new { l.PartId, l.LotId }).ToListAsync(ct)).ToHashSet();
        var rest = (await db.StockBalances.AsNoTracking()
                .Where(b => b.PlaceId == open.Place.Id && b.OnHand > 0 && b.Thickness == null).ToListAsync(ct))
            .Where(b => !counted.Contains(new { b.PartId, b.LotId })).ToList();
        var now = clock.GetCurrentInstant();
        var first = await open.NextNumber(db, ct);
        db.StockCountLines.AddRange(rest.Select((b, index) => new StockCountLine
        {
            Id = NewId.At(now), CountId = open.Count.Id, Number = first + index, PartId = b.PartId, LotId = b.LotId, Counted = 0, Expected = b.OnHand,
            CountedBy = actor.PersonId, CountedAt = now,
        }));
        var version = open.Changed(db);
        await db.SaveChangesAsync(ct);
        return new Answer(rest.Count, version.CurrentValue);
    }
}
