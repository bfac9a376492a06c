using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;

namespace Workshop.Web.Features.Bookings;

/// <summary>What moving, shortening and lengthening a visit have in common.</summary>
internal static class PlannedVisit
{
    /// <summary>Nothing where the visit may be moved: it is booked, or here and its work not begun.</summary>
    public static async Task<Problem?> RefuseMove(WorkshopDbContext db, OpenCard open, CancellationToken ct) =>
        CardRules.RefuseMove(open.Card, await WorkBegun(db, open, ct));

    /// <summary>Something was measured, opened, changed or begun.</summary>
    public static async Task<bool> WorkBegun(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var number = open.Card.Number;
        return open.Items.Any(i => i.StartedAt is not null)
            || await db.PhaseStarts.AnyAsync(s => s.JobCardNumber == number && s.Phase != VisitPhase.Arrival && s.Phase != VisitPhase.ColdSoak, ct)
            || await db.ClearanceReadings.AnyAsync(r => r.JobCardNumber == number, ct)
            || await db.ShimObservations.AnyAsync(o => o.JobCardNumber == number, ct)
            || await db.FastenerTicks.AnyAsync(t => t.JobCardNumber == number, ct)
            || await db.ValveEvents.AnyAsync(e => e.JobCardNumber == number, ct)
            || await db.PartChanges.AnyAsync(c => c.JobCardNumber == number, ct);
    }

    /// <summary>Of a motorcycle that is checked in: its arrival as planned, and from when on it is cold.</summary>
    public static async Task<StandsHere?> Here(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        if (open.CheckIn is null)
        {
            return null;
        }

        var number = open.Card.Number;
        var arrival = await db.PlannedPhases.AsNoTracking().SingleOrDefaultAsync(p => p.JobCardNumber == number && p.Phase == VisitPhase.Arrival, ct);
        return new StandsHere(arrival?.Span, open.ColdFrom!.Value);
    }

    /// <summary>Plans the visit anew where a person wants it, and writes that plan.</summary>
    public static async Task<Outcome<MoveVisit.Answer>> Replace(
        WorkshopDbContext db, OpenCard open, VisitCase visit, OpeningCalendar calendar, Placement wanted, PlanTerms terms, Actor actor, IClock clock,
        CancellationToken ct)
    {
        var card = open.Card;
        if (!(await Placing.Plan(db, visit, calendar, wanted, terms, [card.Number], ct)).TryGet(out var plan, out var problem))
        {
            return problem;
        }

        var other = await db.JobCards.AsNoTracking().FirstOrDefaultAsync(
            c => c.MotorcycleId == card.MotorcycleId && c.Number != card.Number
                && (c.State == JobCardState.Booked || c.State == JobCardState.CheckedIn)
                && c.StartsAt < plan.ReadyAt && plan.ArrivesAt < c.EndsAt, ct);
        if (other is not null)
        {
            return Problem.Conflict("motorcycle-booked",
                $"The motorcycle is booked already on job card {other.Number} from {calendar.Time.Say(other.StartsAt)} until {calendar.Time.Say(other.EndsAt)}.");
        }

        if (await PlanWriter.Write(db, card, plan, clock, ct) is { } taken)
        {
            return await Placing.WithNextSlot(db, taken, visit, calendar, wanted.StartField, wanted.StartsAt, terms, [card.Number], ct);
        }

        await KitReservations.ReserveWhatLasts(db, [card.Number], actor, clock, ct);
        return new MoveVisit.Answer(card.Number, plan.ArrivesAt, plan.WorkStartsAt, plan.ReadyAt, PlannedPhaseAnswer.Of(plan), card.PlanRevision);
    }

    /// <summary>The bay and the technician of a card's work as it is planned; nothing for a card from before there were phases.</summary>
    public static async Task<(Guid Bay, Guid Technician, Instant StartsAt)?> Place(WorkshopDbContext db, int number, CancellationToken ct)
    {
        var work = await (
            from occupancy in db.Occupancies.AsNoTracking()
            join resource in db.Resources on occupancy.ResourceId equals resource.Id
            where occupancy.JobCardNumber == number && occupancy.Live && occupancy.Phase == VisitPhase.Work
            select new { resource.Id, resource.Kind }).Distinct().ToListAsync(ct);
        var planned = await db.PlannedPhases.AsNoTracking().SingleOrDefaultAsync(p => p.JobCardNumber == number && p.Phase == VisitPhase.Work, ct);
        var bay = work.Find(w => w.Kind == ResourceKind.Bay);
        var technician = work.Find(w => w.Kind == ResourceKind.Technician);
        return bay is null || technician is null || planned is null ? null : (bay.Id, technician.Id, planned.Span.Start);
    }
}
