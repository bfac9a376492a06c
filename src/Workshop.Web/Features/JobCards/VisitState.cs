using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;

namespace Workshop.Web.Features.JobCards;

/// <summary>A card that is worked on, with how far it is and what it still takes.</summary>
/// <param name="Taken">Live occupancies, tracked.</param>
internal sealed record VisitState(OpenCard Open, VisitSoFar SoFar, IReadOnlyList<TakenByVisit> Taken)
{
    private const string OilDrained = "oil-drained";

    public JobCard Card => Open.Card;

    /// <summary>Bays and parking places that it takes.</summary>
    public IReadOnlyList<TakenByVisit> Places => [.. Taken.Where(t => t.Resource.Kind is ResourceKind.Bay or ResourceKind.ParkingPlace)];

    /// <summary>Where the motorcycle stands.</summary>
    public Guid? StandsIn(Instant now) => StandingPlace.Of(
        SoFar.Begun, SoFar.Moves, [.. Places.Select(p => new Take(p.Row.Phase, p.Resource.Id, p.Row.Span))], now);

    /// <summary>Locks the card; refuses one that is not here, or gone.</summary>
    public static async Task<Outcome<VisitState>> ForWork(WorkshopDbContext db, int number, CancellationToken ct) =>
        (await OpenCard.ForWork(db, number, ct)).TryGet(out var open, out var problem) ? await Read(db, open, ct) : problem;

    /// <summary>The state of a card that is checked in.</summary>
    public static async Task<VisitState> Read(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var number = open.Card.Number;
        var items = open.Items.Where(i => i.Likelihood != Likelihood.Possible || i.StartedAt is not null).Select(open.ItemOf).ToList();
        var taken = await (
            from occupancy in db.Occupancies
            join resource in db.Resources on occupancy.ResourceId equals resource.Id
            where occupancy.JobCardNumber == number && occupancy.Live
            select new TakenByVisit(occupancy, resource)).ToListAsync(ct);
        return new VisitState(
            open,
            new VisitSoFar
            {
                Number = number,
                CheckedInAt = open.CheckIn!.CheckedInAt,
                Begun = await db.PhaseStarts.AsNoTracking().Where(s => s.JobCardNumber == number)
                    .OrderBy(s => s.StartedAt).ThenBy(s => s.Id).ToListAsync(ct),
                Moves = await db.MotorcycleMoves.AsNoTracking().Where(m => m.JobCardNumber == number)
                    .OrderBy(m => m.MovedAt).ThenBy(m => m.Id).ToListAsync(ct),
                ColdFrom = items.Exists(VisitShape.NeedsColdEngine) ? open.ColdFrom : null,
                Cure = Duration.FromMinutes(Opened.By(open.Specification, items).Joints.Max(j => j.Sealant?.CureMinutes) ?? 0),
                DrainsOil = open.ItemsUnderWay.Any(i => i.DrainsWarm || i.Cautions.Contains(OilDrained)),
                AsksForRecheck = open.Specification.RecheckAfter(items) is not null,
                RecheckedAt = await db.VisitRechecks.Where(r => r.JobCardNumber == number && r.Point == RecheckPoint.Cooled).MaxAsync(r => (Instant?)r.RecheckedAt, ct),
                Waits = await db.VisitWaits.SingleOrDefaultAsync(w => w.JobCardNumber == number && w.EndedAt == null, ct),
            },
            taken);
    }
}

/// <summary>What a visit takes of whom.</summary>
internal sealed record TakenByVisit(Occupancy Row, Resource Resource);
