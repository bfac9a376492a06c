using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Replan;

/// <summary>
/// The visits of a week that may be moved, and all that is taken by others. Work stays in its week. What arrives before the next
/// working day opens stays where it is: its owner could not be told in time.
/// </summary>
/// <param name="MovableFrom">Nothing is moved from or to before.</param>
/// <param name="Cards">Of the week's visits, tracked by the context.</param>
internal sealed record ReplanCase(ReplanWeek Week, Instant MovableFrom, IReadOnlyDictionary<int, ReplanCase.Card> Cards)
{
    /// <summary>How far before its week a motorcycle may come to stand until it is cold.</summary>
    private static readonly Duration ComesBefore = Duration.FromDays(3);

    public sealed record Card(JobCard Row, string Registration, string Motorcycle);

    /// <param name="only">These cards only; absent: all that may be moved.</param>
    public static async Task<ReplanCase> Read(
        WorkshopDbContext db, OpeningCalendar calendar, IsoWeek week, int[]? only, Instant now, CancellationToken ct)
    {
        var span = new Interval(calendar.Time.WholeDay(week.Monday).Start, calendar.Time.WholeDay(week.Next.Monday).Start);
        var movableFrom = calendar.FirstOpenDay(calendar.Time.DayOf(now).PlusDays(1)) is { } day ? calendar.OpenOn(day)!.Value.Start : span.End;
        var cards = await ReadCards(db, span, movableFrom, only, ct);
        var plans = await Plans(db, [.. cards.Select(c => c.Row.Number)], ct);
        var visits = new List<ReplanVisit>();
        foreach (var card in cards.Where(c => plans.ContainsKey(c.Row.Number)))
        {
            visits.Add(await Visit(db, calendar, card.Row, plans[card.Row.Number], span, movableFrom, now, ct));
        }

        var from = Instant.Max(calendar.Time.WholeDay(calendar.Time.DayOf(now)).Start, Earliest(visits, span));
        var until = visits.Select(v => v.Today.ReadyAt).Append(span.End).Max() + Duration.FromDays(1);
        var floor = await FloorReader.Read(db, calendar, from, Instant.Max(until, from + Duration.FromDays(1)), [.. visits.Select(v => v.Number)], null, ct);
        return new ReplanCase(
            new ReplanWeek(span, floor, visits), movableFrom, cards.ToDictionary(c => c.Row.Number));
    }

    private static Instant Earliest(List<ReplanVisit> visits, Interval week) =>
        visits.Select(v => v.Today.ArrivesAt).Append(week.Start - ComesBefore).Min();

    /// <summary>Booked visits whose work begins in the week; of a motorcycle that comes twice, none.</summary>
    private static async Task<IReadOnlyList<Card>> ReadCards(
        WorkshopDbContext db, Interval week, Instant movableFrom, int[]? only, CancellationToken ct)
    {
        var found = await (
            from phase in db.PlannedPhases.FromSql($"select * from planned_phases where phase = 'work' and lower(span) >= {week.Start} and lower(span) < {week.End}")
            join card in db.JobCards on phase.JobCardNumber equals card.Number
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            where card.State == JobCardState.Booked && card.StartsAt >= movableFrom && (only == null || only.Contains(card.Number))
                && !db.JobCards.Any(o => o.MotorcycleId == card.MotorcycleId && o.Number != card.Number
                    && (o.State == JobCardState.Booked || o.State == JobCardState.CheckedIn))
            orderby card.Number
            select new { card, motorcycle.Registration, motorcycle.Maker, motorcycle.Model }).ToListAsync(ct);
        return [.. found.Select(f => new Card(f.card, f.Registration, $"{f.Maker} {f.Model}"))];
    }

    private static async Task<Dictionary<int, VisitPlan>> Plans(WorkshopDbContext db, List<int> numbers, CancellationToken ct)
    {
        var phases = (await db.PlannedPhases.AsNoTracking().Where(p => numbers.Contains(p.JobCardNumber)).ToListAsync(ct)).ToLookup(p => p.JobCardNumber);
        var takes = (await db.Occupancies.AsNoTracking().Where(o => numbers.Contains(o.JobCardNumber) && o.Live).ToListAsync(ct)).ToLookup(o => o.JobCardNumber);
        return phases.ToDictionary(p => p.Key, p => new VisitPlan(
            [.. p.OrderBy(x => x.Span.Start).ThenBy(x => x.Phase).Select(x => new PhaseSpan(x.Phase, x.Span))],
            [.. takes[p.Key].Select(t => new Take(t.Phase, t.ResourceId, t.Span))]));
    }

    private static async Task<ReplanVisit> Visit(
        WorkshopDbContext db, OpeningCalendar calendar, JobCard card, VisitPlan today, Interval week, Instant movableFrom, Instant now, CancellationToken ct)
    {
        var visit = await VisitCase.OfCard(db, (await OpenCard.Find(db, card.Number, ct)).Value, ct);
        var parts = await PartsShort.Read(db, visit, calendar, card.Number, now, ct);

        // Parts that come after the work as it stands are known to whoever booked it: they do not push it.
        var partsFrom = parts.From is { } from && from > today.WorkStartsAt ? today.WorkStartsAt : parts.From;
        return new ReplanVisit(
            card.Number, visit.Shape, visit.Needs,
            visit.Terms(movableFrom, Instant.Max(week.Start, partsFrom ?? week.Start)),
            visit.Wishes.TechnicianId, visit.Wishes.BayId, today);
    }
}
