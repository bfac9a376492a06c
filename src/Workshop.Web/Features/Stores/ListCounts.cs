using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>The counts of the stores: those that are open first, then the latest.</summary>
public static class ListCounts
{
    private const int Most = 100;

    public sealed record Request;

    public sealed record Answer(IReadOnlyList<Row> Rows);

    /// <param name="Differences">Parts whose books the count changed; absent while it is open.</param>
    public sealed record Row(
        Guid Id, string PlaceCode, string Place, string StartedBy, Instant StartedAt, Instant? ClosedAt, bool GivenUp, int? Differences);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        new Answer(await (
            from count in db.StockCounts.AsNoTracking()
            join place in db.StoragePlaces on count.PlaceId equals place.Id
            join person in db.People on count.StartedBy equals person.Id
            orderby count.ClosedAt == null descending, count.StartedAt descending
            select new Row(
                count.Id, place.Code, place.Name, person.Name, count.StartedAt, count.ClosedAt, count.GivenUp,
                count.ClosedAt == null ? null : db.StockMovements.Count(m => m.CountId == count.Id && m.OnHandChange != 0))).Take(Most).ToListAsync(ct));
}
