using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>Places by what their labels say.</summary>
internal static class PlacesByCode
{
    public static async Task<Outcome<StoragePlace>> Find(WorkshopDbContext db, string code, string field, CancellationToken ct) =>
        await db.StoragePlaces.AsNoTracking().SingleOrDefaultAsync(p => p.Code == code, ct) is { } place
            ? place
            : Problem.Impossible("place-unknown", field, $"{field} is \"{code}\": no place has it; choose one of GET /api/v1/stock/places.");

    /// <summary>Nothing is put to a place that is retired.</summary>
    public static Problem? RefusePutting(StoragePlace place, string field) => !place.Retired ? null :
        Problem.Impossible("place-retired", field, $"{field} is \"{place.Code}\", {place.Name}, which is retired; nothing is put there.");
}
