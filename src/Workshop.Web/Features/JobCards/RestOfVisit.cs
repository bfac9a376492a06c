using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Resources;

namespace Workshop.Web.Features.JobCards;

/// <summary>
/// What is left of a visit whose work begins or goes on now, planned from now on: it moves nobody else. What does not fit is taken as
/// far as it is free, since a motorcycle that stands there cannot be refused.
/// </summary>
internal static class RestOfVisit
{
    private const int LeastMinutes = 5;
    private const int MostPauses = 8;

    /// <summary>Writes the plan of the rest; nothing of what the card holds may be unsaved.</summary>
    /// <param name="visit">As it was before the work began or went on.</param>
    /// <param name="bay">Where it stands.</param>
    /// <param name="technician">Who works on it.</param>
    /// <returns>What is not free for so long, and who has it.</returns>
    public static async Task<IReadOnlyList<string>> PlanFromNow(
        WorkshopDbContext db, VisitState visit, Resource bay, Resource technician, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var wanted = await VisitCase.OfCard(db, visit.Open, ct);
        var left = wanted with
        {
            Shape = wanted.Shape with
            {
                ArrivalMinutes = 0,
                ArrivalTakes = ArrivalTakes.Nobody,
                Soak = Duration.Zero,
                WorkMinutes = Math.Max(LeastMinutes, wanted.Shape.WorkMinutes - await MinutesWorked(db, visit, calendar, now, ct)),
            },
        };
        var floor = await left.LockAndRead(db, calendar, bay.Id, technician.Id, now, now, [visit.Card.Number], ct);
        var planner = new PhasePlanner(floor, left.Shape, left.Needs, new PlanTerms { Now = now, Here = new StandsHere(null, now) });
        var found = Plan(planner, bay, technician, now, out var start);
        if (found.Plan is not { } plan)
        {
            return await TakeAsFar(db, visit, bay, left.Shape, floor, found, clock, ct);
        }

        await PlanWriter.Write(db, visit.Card, await Whole(db, visit, plan, bay, now, start, ct), clock, ct);
        return [];
    }

    /// <summary>From now, or from when the technician comes back from a break or in the morning.</summary>
    private static PlanOrObstacles Plan(PhasePlanner planner, Resource bay, Resource technician, Instant now, out Instant start)
    {
        start = now;
        var (inBay, by) = (planner.Floor.Find(ResourceKind.Bay, bay.Id)!, planner.Floor.Find(ResourceKind.Technician, technician.Id)!);
        var found = planner.Plan(inBay, by, start);
        for (var i = 0; i < MostPauses && found.Obstacles is [{ Kind: ObstacleKind.OffDuty, Span: { } pause }]; i++)
        {
            start = pause.End;
            found = planner.Plan(inBay, by, start);
        }

        return found;
    }

    /// <summary>With what lies behind: arrival and soak as they were planned, the work from when it was begun.</summary>
    private static async Task<VisitPlan> Whole(
        WorkshopDbContext db, VisitState visit, VisitPlan rest, Resource bay, Instant now, Instant start, CancellationToken ct)
    {
        var number = visit.Card.Number;
        var begun = visit.SoFar.Begun.Where(s => s.Phase == VisitPhase.Work).Select(s => (Instant?)s.StartedAt).FirstOrDefault() ?? now;
        var before = (await db.PlannedPhases.AsNoTracking().Where(p => p.JobCardNumber == number && p.Phase < VisitPhase.Work).ToListAsync(ct))
            .Where(p => p.Phase is VisitPhase.Arrival or VisitPhase.ColdSoak && p.Span.Start < begun)
            .Select(p => new PhaseSpan(p.Phase, new Interval(p.Span.Start, Instant.Min(p.Span.End, begun))));
        var after = rest.Phases.Where(p => p.Phase >= VisitPhase.Work)
            .Select(p => p.Phase == VisitPhase.Work ? p with { Span = new Interval(begun, p.Span.End) } : p);
        return new VisitPlan(
            [.. before.Concat(after).OrderBy(p => p.Span.Start)],
            start > now ? [new Take(VisitPhase.Work, bay.Id, new Interval(now, start)), .. rest.Takes] : rest.Takes);
    }

    private static async Task<IReadOnlyList<string>> TakeAsFar(
        WorkshopDbContext db, VisitState visit, Resource bay, VisitShape shape, WorkshopFloor floor, PlanOrObstacles found, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        await PlanWriter.LetGo(db, [visit.Card.Number], now, ct);
        visit.Card.PlanRevision++;
        var length = Duration.FromMinutes(shape.WorkMinutes + shape.CureMinutes + shape.WarmRunMinutes + shape.TestRideMinutes);
        var missing = await TakeWhatIsFree.Take(db, visit.Card, VisitPhase.Work, bay, new Interval(now, now + length), floor.Time, clock, ct);
        await db.SaveChangesAsync(ct);
        var others = found.Obstacles.Where(o => o.Resource?.Kind != ResourceKind.Bay).Select(o => ObstacleWords.Say(o, floor, now));
        return [.. missing is null ? others : others.Prepend(missing)];
    }

    /// <summary>Minutes of work that lie behind, within the hours of whoever worked.</summary>
    private static async Task<int> MinutesWorked(
        WorkshopDbContext db, VisitState visit, OpeningCalendar calendar, Instant now, CancellationToken ct)
    {
        var begun = visit.SoFar.Begun;
        if (visit.SoFar.WorkBegunAt is null)
        {
            return 0;
        }

        var ids = begun.Where(s => s.TechnicianId is not null).Select(s => s.TechnicianId!.Value).Distinct().ToArray();
        var technicians = await db.Resources.AsNoTracking().Where(r => ids.Contains(r.Id)).ToListAsync(ct);
        var days = new DateInterval(calendar.Time.DayOf(begun[0].StartedAt), calendar.Time.DayOf(now));
        var times = await WorkingTimes.Read(db, calendar, technicians, days, ct);
        var worked = Duration.Zero;
        for (var i = 0; i < begun.Count; i++)
        {
            var until = i + 1 < begun.Count ? begun[i + 1].StartedAt : now;
            if (begun[i] is { Phase: VisitPhase.Work, TechnicianId: { } who } && times.TryGetValue(who, out var hours))
            {
                for (var day = calendar.Time.DayOf(begun[i].StartedAt); day <= calendar.Time.DayOf(until); day = day.PlusDays(1))
                {
                    worked += hours.On(day)
                        .Select(s => Instant.Min(s.End, until) - Instant.Max(s.Start, begun[i].StartedAt))
                        .Where(d => d > Duration.Zero).Aggregate(Duration.Zero, (sum, d) => sum + d);
                }
            }
        }

        return (int)worked.TotalMinutes;
    }
}
