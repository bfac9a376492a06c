using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Resources;

namespace Workshop.Web.Features.Bookings;

/// <summary>Visits that are under way or come within two weeks, and when technicians work meanwhile: what late running is reckoned on.</summary>
/// <param name="Motorcycles">Registration, maker and model by card.</param>
/// <param name="NotCome">Cards whose time is over without the motorcycle having come; they hold nobody back.</param>
internal sealed record VisitsToday(
    IReadOnlyList<VisitToday> Visits,
    IReadOnlyDictionary<Guid, IReadOnlyList<Interval>> Working,
    IReadOnlyList<Interval> Open,
    IReadOnlyDictionary<int, string> Motorcycles,
    IReadOnlyDictionary<Guid, Resource> Resources,
    IReadOnlyList<(int Number, Instant PlannedReady)> NotCome)
{
    public const int DaysAhead = 14;

    public static async Task<VisitsToday> Read(WorkshopDbContext db, OpeningCalendar calendar, Instant now, CancellationToken ct)
    {
        var until = now + Duration.FromDays(DaysAhead);
        var cards = await (
            from card in db.JobCards.AsNoTracking()
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            where card.State == JobCardState.CheckedIn || (card.State == JobCardState.Booked && card.StartsAt < until)
            orderby card.Number
            select new { card, Motorcycle = motorcycle.Registration + ", " + motorcycle.Maker + " " + motorcycle.Model }).ToListAsync(ct);
        var expected = cards.Where(c => c.card.State == JobCardState.CheckedIn || c.card.EndsAt > now).Select(c => c.card).ToList();
        var numbers = expected.Select(c => c.Number).ToArray();
        var phases = (await db.PlannedPhases.AsNoTracking().Where(p => numbers.Contains(p.JobCardNumber)).ToListAsync(ct)).ToLookup(p => p.JobCardNumber);
        var takes = (await db.Occupancies.AsNoTracking().Where(o => o.Live && numbers.Contains(o.JobCardNumber)).ToListAsync(ct))
            .ToLookup(o => o.JobCardNumber);
        var here = (await VisitsHere.Read(db, ct)).ToDictionary(v => v.Number);
        var soaks = await Soaks(db, [.. expected.Where(c => c.State == JobCardState.Booked && c.StartsAt < now)], ct);
        var resources = await db.Resources.AsNoTracking().ToDictionaryAsync(r => r.Id, ct);
        return new VisitsToday(
            [.. expected.Select(c => Today(c, [.. phases[c.Number]], [.. takes[c.Number]], here.GetValueOrDefault(c.Number), soaks.GetValueOrDefault(c.Number)))],
            await Hours(db, calendar, [.. resources.Values.Where(r => r.Kind == ResourceKind.Technician)], new Interval(now - Duration.FromDays(1), until), ct),
            [.. new DateInterval(calendar.Time.DayOf(now), calendar.Time.DayOf(until)).Select(calendar.OpenOn).OfType<Interval>()],
            cards.ToDictionary(c => c.card.Number, c => c.Motorcycle),
            resources,
            [.. cards.Where(c => c.card.State == JobCardState.Booked && c.card.EndsAt <= now).Select(c => (c.card.Number, c.card.EndsAt))]);
    }

    /// <summary>Who is late, and whom that pushes; with some of the visits as they would be.</summary>
    public LateAndPushed Reckon(Instant now, IReadOnlyCollection<VisitToday>? instead = null) => LateRunning.Of(instead ?? Visits, Working, Open, now);

    private static VisitToday Today(JobCard card, PlannedPhase[] phases, Occupancy[] takes, VisitHere? here, Duration soak) => new()
    {
        Number = card.Number,
        Planned = phases.Length == 0
            ? [new PhaseSpan(VisitPhase.Work, new Interval(card.StartsAt, card.EndsAt))]
            : [.. phases.OrderBy(p => p.Span.Start).ThenBy(p => p.Phase).Select(p => new PhaseSpan(p.Phase, p.Span))],

        // While it waits its bay is kept for the work that goes on.
        Takes = [.. takes.Select(o => new Take(o.Phase == VisitPhase.Waiting ? VisitPhase.Work : o.Phase, o.ResourceId, o.Span))],
        CameAt = here?.CheckedInAt,
        Begun = here is null ? [] : [.. here.Begun.Where(s => s.Phase != VisitPhase.Waiting).Select(s => (s.Phase, s.StartedAt))],
        ColdFrom = here?.ColdFrom,
        Soak = soak,
        Waits = here?.Waits is { } wait ? (wait.Since, wait.ExpectedUntil) : null,
    };

    /// <summary>How long engines must stand that should be here by now.</summary>
    private static async Task<Dictionary<int, Duration>> Soaks(WorkshopDbContext db, List<JobCard> due, CancellationToken ct)
    {
        var soaks = new Dictionary<int, Duration>();
        foreach (var card in due)
        {
            var open = (await OpenCard.Find(db, card.Number, ct)).Value;
            soaks[card.Number] = (await VisitCase.OfCard(db, open, ct)).Shape.Soak;
        }

        return soaks;
    }

    private static async Task<IReadOnlyDictionary<Guid, IReadOnlyList<Interval>>> Hours(
        WorkshopDbContext db, OpeningCalendar calendar, List<Resource> technicians, Interval window, CancellationToken ct)
    {
        var days = new DateInterval(calendar.Time.DayOf(window.Start), calendar.Time.DayOf(window.End));
        var times = await WorkingTimes.Read(db, calendar, technicians, days, ct);
        return technicians.ToDictionary(t => t.Id, t => (IReadOnlyList<Interval>)[.. days.SelectMany(times[t.Id].On)]);
    }
}
