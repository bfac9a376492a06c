using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Resources;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Diary;

/// <summary>Some days of the workshop: what is open, who works when, what each visit takes, and what stands wrong or runs late.</summary>
public static class GetDiary
{
    private const int MostDays = 35;

    /// <param name="From">The first day.</param>
    /// <param name="Until">The day after the last.</param>
    public sealed record Request(string? From, string? Until);

    public sealed record Answer(
        string TimeZone, IReadOnlyList<OpenDay> Days, IReadOnlyList<ResourceDays> Resources, IReadOnlyList<Visit> Visits);

    /// <param name="Week">By ISO 8601.</param>
    /// <param name="OpensAt">Absent when the workshop is closed that day.</param>
    public sealed record OpenDay(LocalDate Date, string Week, Instant? OpensAt, Instant? ClosesAt, string? ClosedBecause);

    /// <param name="Works">Technicians only: the stretches in which work goes on, breaks and absences taken out.</param>
    /// <param name="Breaks">Technicians only.</param>
    public sealed record ResourceDays(
        Guid Id,
        ResourceKind Kind,
        string Name,
        IReadOnlyList<Stretch> Works,
        IReadOnlyList<Stretch> Breaks,
        IReadOnlyList<Away> Absences,
        IReadOnlyList<Taken> Taken);

    public sealed record Stretch(Instant From, Instant Until);

    public sealed record Away(Instant From, Instant Until, AbsenceReason Reason);

    /// <param name="Why">Absent while it can stand there.</param>
    public sealed record Taken(int JobCardNumber, VisitPhase Phase, Instant From, Instant Until, Misplacement? Why);

    /// <param name="Movable">Booked, and nothing of it has begun.</param>
    /// <param name="Late">In words; absent while it goes as planned.</param>
    public sealed record Visit(
        int JobCardNumber,
        JobCardState State,
        string Registration,
        string Motorcycle,
        Instant ArrivesAt,
        Instant ReadyAt,
        bool Movable,
        string? Late,
        IReadOnlyList<PhaseOfVisit> Phases);

    public sealed record PhaseOfVisit(VisitPhase Phase, Instant From, Instant Until, Misplacement? Why);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.From).IsGiven("the first day").IsDay();
            RuleFor(r => r.Until).IsGiven("the day after the last").IsDay();
            RuleFor(r => r.Until).Must((r, until) => !Days.TryRead(r.From ?? "", out var first) || !Days.TryRead(until ?? "", out var end)
                    || (end > first && Period.DaysBetween(first, end) <= MostDays))
                .WithMessage((r, until) => $"until is {until}: a day after {r.From}, at most {MostDays} days on, is allowed.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var (first, end) = (Days.Read(request.From!), Days.Read(request.Until!));
        var interval = new DateInterval(first, end.PlusDays(-1));
        var days = interval.ToList();
        var span = new Interval(calendar.Time.WholeDay(first).Start, calendar.Time.WholeDay(interval.End).End);
        var takes = (await Occupied.LiveDuring(db, span).ToListAsync(ct)).ToLookup(o => o.ResourceId);
        var resources = (await db.Resources.AsNoTracking().ToListAsync(ct)).Where(r => !r.Retired || takes.Contains(r.Id)).ToList();
        var times = await WorkingTimes.Read(db, calendar, resources, interval, ct);
        var visits = await Visits(db, calendar, span, [.. takes.SelectMany(t => t).Select(t => t.JobCardNumber).Distinct()], clock.GetCurrentInstant(), ct);
        return new Answer(
            calendar.Time.Zone.Id,
            [.. days.Select(d => new OpenDay(d, IsoWeek.Of(d).ToString(), calendar.OpenOn(d)?.Start, calendar.OpenOn(d)?.End, calendar.ClosedBecause(d)))],
            [.. resources.OrderBy(r => r.Kind).ThenBy(r => r.Name, StringComparer.Ordinal).Select(r => Of(r, times[r.Id], calendar, days, span, takes[r.Id]))],
            visits);
    }

    private static ResourceDays Of(
        Resource resource, WorkingTime time, OpeningCalendar calendar, IReadOnlyList<LocalDate> days, Interval span, IEnumerable<Occupancy> takes)
    {
        var technician = resource.Kind == ResourceKind.Technician;
        return new ResourceDays(
            resource.Id, resource.Kind, resource.Name,
            technician ? [.. days.SelectMany(time.On).Select(s => new Stretch(s.Start, s.End))] : [],
            technician ? [.. days.SelectMany(time.BreaksOn).Select(s => new Stretch(s.Start, s.End))] : [],
            [.. time.AbsencesDuring(span).Select(a => new Away(a.Span.Start, a.Span.End, a.Reason))],
            [.. takes.OrderBy(t => t.Span.Start).Select(t => new Taken(
                t.JobCardNumber, t.Phase, t.Span.Start, t.Span.End, Misplacements.Of(resource.Kind, time, calendar, t.Span)))]);
    }

    private static async Task<IReadOnlyList<Visit>> Visits(
        WorkshopDbContext db, OpeningCalendar calendar, Interval span, IReadOnlyList<int> taking, Instant now, CancellationToken ct)
    {
        var touching = await db.PlannedPhases.FromSql($"select * from planned_phases where span && {span}").Select(p => p.JobCardNumber).Distinct().ToListAsync(ct);
        var numbers = taking.Union(touching).ToList();
        var cards = await (
            from card in db.JobCards.AsNoTracking()
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            where numbers.Contains(card.Number) && card.State != JobCardState.Cancelled && card.State != JobCardState.NoShow
            orderby card.StartsAt, card.Number
            select new { card, motorcycle.Registration, Motorcycle = motorcycle.Maker + " " + motorcycle.Model }).ToListAsync(ct);
        var plans = (await db.PlannedPhases.AsNoTracking().Where(p => numbers.Contains(p.JobCardNumber)).ToListAsync(ct)).ToLookup(p => p.JobCardNumber);
        var late = await LateMarks.Read(db, calendar, span, now, ct);
        return [.. cards.Select(c => new Visit(
            c.card.Number, c.card.State, c.Registration, c.Motorcycle, c.card.StartsAt, c.card.EndsAt,
            c.card.State == JobCardState.Booked,
            late.GetValueOrDefault(c.card.Number),
            [.. plans[c.card.Number].OrderBy(p => p.Span.Start).ThenBy(p => p.Phase)
                .Select(p => new PhaseOfVisit(p.Phase, p.Span.Start, p.Span.End, Misplacements.Of(p.Phase, calendar, p.Span)))]))];
    }
}
