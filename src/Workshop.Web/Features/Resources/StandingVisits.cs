using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.Resources;

/// <summary>A part of a booked visit that can no longer stand where it is.</summary>
/// <param name="Phases">Those of the resource that it concerns, in their order.</param>
/// <param name="From">Of the first of them.</param>
/// <param name="Until">Of the last of them.</param>
/// <param name="Resource">Who or what it has taken; absent for arrival and hand-over, where the owner comes.</param>
public sealed record StandingVisit(
    int JobCardNumber,
    string Registration,
    string Motorcycle,
    IReadOnlyList<VisitPhase> Phases,
    string? Resource,
    Instant From,
    Instant Until,
    Misplacement Why,
    string WhyInWords);

/// <summary>
/// Booked visits that can no longer stand where they are: in an absence, outside the hours. They stay as they are until a person
/// moves them; whatever makes them stand wrong says so.
/// </summary>
internal static class StandingVisits
{
    /// <summary>Those of one resource, or of all; what lies behind is left alone.</summary>
    public static async Task<IReadOnlyList<StandingVisit>> Read(WorkshopDbContext db, Guid? resourceId, Instant now, CancellationToken ct)
    {
        var ahead = new Interval(now, Instant.MaxValue);
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var resources = await db.Resources.AsNoTracking().Where(r => resourceId == null || r.Id == resourceId).ToDictionaryAsync(r => r.Id, ct);
        var takes = await OpenCards(db, from occupancy in Ahead(db, ahead)
            where resourceId == null || occupancy.ResourceId == resourceId
            select new Standing(occupancy.JobCardNumber, occupancy.Phase, occupancy.ResourceId, occupancy.Span), ct);
        var days = new DateInterval(
            calendar.Time.DayOf(now), calendar.Time.DayOf(takes.Select(t => t.Take.Span.End).DefaultIfEmpty(now).Max()));
        var times = await WorkingTimes.Read(db, calendar, resources.Values, days, ct);
        var rows = takes.Select(t => (t.Card, t.Take, Resource: resources[t.Take.ResourceId!.Value]))
            .Select(t => (t.Card, t.Take, Name: (string?)t.Resource.Name,
                Why: Misplacements.Of(t.Resource.Kind, times[t.Resource.Id], calendar, t.Take.Span)));
        if (resourceId is null)
        {
            var phases = await OpenCards(db, from phase in PhasesAhead(db, ahead)
                select new Standing(phase.JobCardNumber, phase.Phase, null, phase.Span), ct);
            rows = rows.Concat(phases.Select(p => (p.Card, p.Take, Name: (string?)null, Why: Misplacements.Of(p.Take.Phase, calendar, p.Take.Span))));
        }

        return [.. rows.Where(r => r.Why is not null)
            .GroupBy(r => (r.Take.JobCardNumber, r.Name, Why: r.Why!.Value))
            .Select(g => new StandingVisit(
                g.Key.JobCardNumber, g.First().Card.Registration, g.First().Card.Motorcycle, [.. g.Select(r => r.Take.Phase).Distinct().Order()], g.Key.Name,
                g.Min(r => r.Take.Span.Start), g.Max(r => r.Take.Span.End), g.Key.Why, g.Key.Why.Spoken()))
            .OrderBy(v => v.From).ThenBy(v => v.JobCardNumber)];
    }

    /// <summary>What is taken of a resource from now on.</summary>
    public static IQueryable<Occupancy> Ahead(WorkshopDbContext db, Interval span) =>
        db.Occupancies.FromSql($"select * from occupancies where live and span && {span}").AsNoTracking();

    private static IQueryable<PlannedPhase> PhasesAhead(WorkshopDbContext db, Interval span) =>
        db.PlannedPhases.FromSql($"select * from planned_phases where span && {span}").AsNoTracking();

    private sealed record Standing(int JobCardNumber, VisitPhase Phase, Guid? ResourceId, Interval Span);

    private static async Task<IReadOnlyList<((string Registration, string Motorcycle) Card, Standing Take)>> OpenCards(
        WorkshopDbContext db, IQueryable<Standing> takes, CancellationToken ct)
    {
        var read = await takes.ToListAsync(ct);
        var numbers = read.Select(t => t.JobCardNumber).Distinct().ToList();
        var cards = await (
            from card in db.JobCards.AsNoTracking()
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            where numbers.Contains(card.Number) && (card.State == JobCardState.Booked || card.State == JobCardState.CheckedIn)
            select new { card.Number, motorcycle.Registration, Motorcycle = motorcycle.Maker + " " + motorcycle.Model })
            .ToDictionaryAsync(c => c.Number, c => (c.Registration, c.Motorcycle), ct);
        return [.. read.Where(t => cards.ContainsKey(t.JobCardNumber)).Select(t => (cards[t.JobCardNumber], t))];
    }
}
