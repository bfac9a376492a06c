using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>The places of the stores, in the order of a walk through them.</summary>
public static class ListPlaces
{
    /// <param name="Retired">With those that are not used any more.</param>
    /// <param name="CountParts">With how many parts lie there: a list to choose from does without.</param>
    public sealed record Request(bool Retired = false, bool CountParts = false);

    public sealed record Answer(IReadOnlyList<Place> Places);

    /// <param name="Code">What its label says.</param>
    /// <param name="WalkOrder">Where it comes on a walk; picking follows it.</param>
    /// <param name="Parts">How many different parts lie there; absent where it was not asked for.</param>
    /// <param name="OpenCountId">The count of it that is not closed yet.</param>
    public sealed record Place(
        Guid Id, string Name, string Code, int WalkOrder, bool Retired, int? Parts, Guid? OpenCountId, uint RowVersion) : IHasVersion;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        new Answer(await (
            from place in db.StoragePlaces.AsNoTracking()
            where request.Retired || !place.Retired
            orderby place.WalkOrder, place.Name
            select new Place(
                place.Id, place.Name, place.Code, place.WalkOrder, place.Retired,
                request.CountParts
                    ? db.StockBalances.Where(b => b.PlaceId == place.Id && b.OnHand > 0).Select(b => b.PartId).Distinct().Count()
                    : null,
                db.StockCounts.Where(c => c.PlaceId == place.Id && c.ClosedAt == null).Select(c => (Guid?)c.Id).FirstOrDefault(),
                EF.Property<uint>(place, MappingExtensions.RowVersion))).ToListAsync(ct));
}
