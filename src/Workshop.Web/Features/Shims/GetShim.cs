using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Shims;

/// <summary>One shim, and everything that happened to it, the oldest first.</summary>
public static class GetShim
{
    public sealed record Request(Guid Id);

    public sealed record Answer(ListShims.Row Shim, IReadOnlyList<Movement> Movements);

    /// <param name="Motorcycle">The registration, where it went into or came out of an engine.</param>
    /// <param name="Reason">Why it was scrapped.</param>
    /// <param name="Remark">What was said about it.</param>
    public sealed record Movement(
        Guid Id,
        Instant At,
        MovementKind Kind,
        ShimThickness? ThicknessMm,
        StockCondition Condition,
        decimal OnHandChange,
        string Place,
        int? JobCardNumber,
        string? Motorcycle,
        ValveKey? Valve,
        ScrapReason? Reason,
        string? Remark,
        string By);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await ListShims.Rows(db, db.Shims.Where(s => s.Id == request.Id), null).SingleOrDefaultAsync(ct) is not { } known)
        {
            return Problem.NotFound($"Shim {request.Id}");
        }

        var movements = await (
            from movement in db.StockMovements.AsNoTracking()
            join place in db.StoragePlaces on movement.PlaceId equals place.Id
            join person in db.People on movement.MovedBy equals person.Id
            from card in db.JobCards.Where(c => c.Number == movement.JobCardNumber && movement.EngineId != null).DefaultIfEmpty()
            from motorcycle in db.Motorcycles.Where(m => m.Id == card!.MotorcycleId).DefaultIfEmpty()
            from remark in db.Remarks.Where(r => r.Id == movement.ReasonRemarkId).DefaultIfEmpty()
            where movement.ShimId == request.Id
            select new Movement(
                movement.Id, movement.MovedAt, movement.Kind, movement.Thickness, movement.Condition, movement.OnHandChange,
                place.Name, movement.JobCardNumber, motorcycle!.Registration, movement.Valve, movement.ScrapReason,
                remark!.Text, person.Name)).ToListAsync(ct);

        // Rows of one moment have no order of their own: out of a valve comes before into a box or another valve.
        return new Answer(ListShims.Say(known), [.. movements.OrderBy(m => m.At).ThenBy(m => ShimLedger.WaveOf(m.Kind))]);
    }
}
