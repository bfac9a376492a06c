using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>What is taken and what is free on one day of the workshop's calendar, resource by resource.</summary>
public static class AvailabilityOf
{
    public sealed record Request(string? Date);

    /// <param name="OpensAt">Absent when the workshop is closed that day.</param>
    /// <param name="ClosedBecause">The holiday or the weekday.</param>
    public sealed record Answer(
        LocalDate Date, Instant? OpensAt, Instant? ClosesAt, string? ClosedBecause, IReadOnlyList<ResourceOnDay> Resources);

    /// <param name="Capabilities">Skills of a technician, codes of a tool.</param>
    /// <param name="Free">Within the opening hours.</param>
    public sealed record ResourceOnDay(
        Guid Id,
        ResourceKind Kind,
        string Name,
        IReadOnlyList<string> Capabilities,
        IReadOnlyList<TakenOnDay> Taken,
        IReadOnlyList<FreeOnDay> Free);

    public sealed record TakenOnDay(Instant From, Instant Until, VisitPhase Phase, int JobCardNumber, string Motorcycle);

    public sealed record FreeOnDay(Instant From, Instant Until);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Date).IsGiven("the day to look at").IsDay();
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var date = Days.Read(request.Date!);
        var open = calendar.OpenOn(date);
        var taken = (await Occupied.During(db, calendar.Time.WholeDay(date), ct)).ToLookup(t => t.Resource.Id);
        var resources = await db.Resources.AsNoTracking().Where(r => !r.Retired).ToListAsync(ct);
        return new Answer(
            date,
            open?.Start,
            open?.End,
            calendar.ClosedBecause(date),
            [.. resources
                .OrderBy(r => r.Kind).ThenBy(r => r.Name, StringComparer.Ordinal)
                .Select(r => new ResourceOnDay(
                    r.Id,
                    r.Kind,
                    r.Name,
                    r.Capabilities,
                    [.. taken[r.Id].Select(t => new TakenOnDay(t.Span.Start, t.Span.End, t.Phase, t.By, t.Motorcycle))],
                    open is not { } hours
                        ? []
                        : [.. FreeSpans.Of(hours, taken[r.Id].Select(t => t.Span)).Select(f => new FreeOnDay(f.Start, f.End))]))]);
    }
}
