using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>The places of the stores, by name.</summary>
public static class ListPlaces
{
    public sealed record Request;

    public sealed record Answer(IReadOnlyList<Place> Places);

    public sealed record Place(Guid Id, string Name);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        new Answer(await db.StoragePlaces.AsNoTracking().OrderBy(p => p.Name).Select(p => new Place(p.Id, p.Name)).ToListAsync(ct));
}
