using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>What the asker took in last, the latest first.</summary>
public static class ListReceipts
{
    public sealed record Request(int Take);

    public sealed record Answer(IReadOnlyList<ScanModel.Taken> Rows);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        // By the person's own index and the time in the ids; today's are few.
        var since = clock.GetCurrentInstant() - Duration.FromDays(1);
        return new Answer(await (
            from movement in db.StockMovements.AsNoTracking()
            where movement.MovedBy == actor.PersonId && movement.Kind == MovementKind.Received && movement.MovedAt > since
            join part in db.Parts on movement.PartId equals part.Id
            join place in db.StoragePlaces on movement.PlaceId equals place.Id
            join lot in db.StockLots on movement.LotId equals lot.Id into lots
            from lot in lots.DefaultIfEmpty()
            orderby movement.MovedAt descending, movement.Id descending
            select new ScanModel.Taken(movement.MovedAt, part.Code, part.Name, part.Unit, movement.OnHandChange, place.Name, lot!.Code))
            .Take(request.Take).ToListAsync(ct));
    }
}
