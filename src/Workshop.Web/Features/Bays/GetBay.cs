using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Bays;

/// <summary>The jobs of one bay today: what stands in it, and what is planned to come into it.</summary>
public static class GetBay
{
    /// <param name="Card">A job that is worked on here, wherever the books have it.</param>
    public sealed record Request(Guid Id, int? Card = null);

    /// <param name="Jobs">What stands there first, then in order of time.</param>
    public sealed record Answer(Guid Id, string Name, Instant At, IReadOnlyList<Job> Jobs);

    /// <param name="Here">Checked in: it can be worked on.</param>
    /// <param name="Stands">In this bay, now.</param>
    /// <param name="From">When it is planned to come into the bay, where it does not stand there.</param>
    /// <param name="ColdFrom">When its engine is cold, where it needs to be.</param>
    public sealed record Job(
        int JobCardNumber, string Registration, string Motorcycle, bool Here, bool Stands, VisitPhase? Phase, Instant? From, Instant? ColdFrom, string? Tag);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var bay = await db.Resources.AsNoTracking().SingleOrDefaultAsync(r => r.Id == request.Id && r.Kind == ResourceKind.Bay, ct);
        if (bay is null)
        {
            return Problem.NotFound("This bay");
        }

        var now = clock.GetCurrentInstant();
        var time = await WorkshopTimes.Read(db, ct);
        var here = await VisitsHere.Read(db, ct);
        var stand = here.Where(v => v.StandsIn(now) == bay.Id).OrderByDescending(v => v.Since).ToList();
        var today = time.WholeDay(time.DayOf(now));
        var asked = here.Where(v => v.Number == request.Card && stand.All(s => s.Number != v.Number)).ToList();
        var planned = (await Occupied.During(db, today, ct))
            .Where(t => t.Resource.Id == bay.Id && stand.Concat(asked).All(v => v.Number != t.By))
            .GroupBy(t => t.By).Select(g => g.MinBy(t => t.Span.Start)!).OrderBy(t => t.Span.Start);
        return new Answer(bay.Id, bay.Name, now,
        [
            .. stand.Select(v => Standing(v, true)),
            .. asked.Select(v => Standing(v, false)),
            .. planned.Select(t => Coming(t, here.FirstOrDefault(v => v.Number == t.By))),
        ]);
    }

    private static Job Standing(VisitHere visit, bool stands) =>
        new(visit.Number, visit.Registration, visit.Motorcycle, true, stands, visit.Phase, null, visit.ColdFrom, visit.Tag);

    private static Job Coming(Occupied.Taken taken, VisitHere? here) => new(
        taken.By, here?.Registration ?? taken.Motorcycle.Split(',')[0], taken.Motorcycle, here is not null, false, here?.Phase, taken.Span.Start,
        here?.ColdFrom, here?.Tag);
}
