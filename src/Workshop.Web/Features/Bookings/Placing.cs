using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>Where, with whom and when a person wants a visit.</summary>
/// <param name="StartField">The field of the start as the caller wrote it.</param>
/// <param name="ArrivesAt">Absent: as late as the soak and the opening hours allow.</param>
internal sealed record Placement(Guid BayId, Guid TechnicianId, string StartField, Instant StartsAt, Instant? ArrivesAt = null);

/// <summary>Plans a visit where a person wants it, holding the rows of all that it may take; or says what is in the way, and what is free next.</summary>
internal static class Placing
{
    public static async Task<Outcome<VisitPlan>> Plan(
        WorkshopDbContext db,
        VisitCase visit,
        OpeningCalendar calendar,
        Placement wanted,
        PlanTerms terms,
        int[] exceptCards,
        CancellationToken ct)
    {
        var time = calendar.Time;
        if (wanted.StartsAt < terms.Now)
        {
            return Problem.Impossible("past", wanted.StartField,
                $"{wanted.StartField} is {time.Say(wanted.StartsAt)}, which is past; it is {time.Say(terms.Now)} now.");
        }

        if (wanted.StartsAt > terms.Now + Duration.FromDays(MostDaysAhead))
        {
            return Problem.Impossible("too-far", wanted.StartField,
                $"{wanted.StartField} is {time.Say(wanted.StartsAt)}: at most {MostDaysAhead} days ahead is allowed.");
        }

        var floor = await visit.LockAndRead(
            db, calendar, wanted.BayId, wanted.TechnicianId, wanted.StartsAt, terms.Now, exceptCards, ct);
        var planner = new PhasePlanner(floor, visit.Shape, visit.Needs, terms);
        if (await Unfit(db, planner, wanted, ct) is { } unfit)
        {
            return unfit;
        }

        var answer = planner.Plan(
            floor.Find(ResourceKind.Bay, wanted.BayId)!, floor.Find(ResourceKind.Technician, wanted.TechnicianId)!,
            wanted.StartsAt, wanted.ArrivesAt);
        return answer.Plan is { } plan ? plan : await Refuse(db, visit, calendar, wanted, planner, answer.Obstacles, exceptCards, ct);
    }

    public const int MostDaysAhead = 400;

    /// <summary>A refusal of what others have, with what is free from there on.</summary>
    public static async Task<Problem> WithNextSlot(
        WorkshopDbContext db, Problem taken, VisitCase visit, OpeningCalendar calendar, string startField, Instant from, PlanTerms terms, int[] exceptCards, CancellationToken ct)
    {
        var floor = await VisitCase.ReadAll(db, calendar, terms.Now, from, exceptCards, ct);
        // The work is looked for from the start that was refused, as it would be for parts that come then.
        var next = SlotSearch.Find(
            new PhasePlanner(floor, visit.Shape, visit.Needs, terms with { PartsFrom = Instant.Max(from, terms.PartsFrom ?? from) }),
            new SlotQuery(1, SlotSearch.UsualApartMinutes, visit.Wishes.BayId, visit.Wishes.TechnicianId)).Slots;
        var sentence = next.Count == 0
            ? $"Nothing is free within {SlotSearch.HorizonDays} days."
            : $"The next free slot is {calendar.Time.Say(next[0].Plan.WorkStartsAt)} in {next[0].Bay.Name} with {next[0].Technician.Name}.";
        return taken with
        {
            Sentence = $"{taken.Sentence} {sentence}",
            Faults = [.. taken.Faults, new FieldFault(startField, sentence)],
            Extras = next.Count == 0 ? taken.Extras : new Dictionary<string, object?> { ["nextSlot"] = SlotAnswer.Of(next[0]) },
        };
    }

    private static async Task<Problem> Refuse(
        WorkshopDbContext db,
        VisitCase visit,
        OpeningCalendar calendar,
        Placement wanted,
        PhasePlanner planner,
        IReadOnlyList<Obstacle> obstacles,
        int[] exceptCards,
        CancellationToken ct)
    {
        var taken = obstacles.Where(o => o.Kind is ObstacleKind.Taken or ObstacleKind.ToolsTaken or ObstacleKind.NoPlace).ToList();
        if (taken.Count == 0)
        {
            return Problem.Impossible("does-not-fit", [.. obstacles.Select(o => new FieldFault(
                o.Kind == ObstacleKind.ReadyBy ? "wishes.readyBy" : wanted.StartField, Say(o, planner, calendar, wanted)))]);
        }

        var spans = taken.Where(o => o.Resource is not null && o.Span is not null)
            .Select(o => new Take(VisitPhase.Work, o.Resource!.Id, o.Span!.Value)).ToList();
        var problem = spans.Count == 0
            ? Problem.Conflict("taken", "")
            : await Occupied.Refuse(db, spans, exceptCards, calendar.Time, ct);
        var others = obstacles.Where(o => o.Kind is not (ObstacleKind.Taken or ObstacleKind.ToolsTaken))
            .Select(o => Say(o, planner, calendar, wanted)).ToList();
        problem = problem with
        {
            Sentence = string.Join(' ', others.Prepend(problem.Sentence).Where(s => s.Length > 0)),
            Faults = [.. problem.Faults, .. others.Select(o => new FieldFault(wanted.StartField, o))],
        };
        return await WithNextSlot(db, problem, visit, calendar, wanted.StartField, wanted.StartsAt, planner.Terms, exceptCards, ct);
    }

    private static string Say(Obstacle obstacle, PhasePlanner planner, OpeningCalendar calendar, Placement wanted) =>
        obstacle.Kind is ObstacleKind.OffDuty or ObstacleKind.Closed && calendar.Refuse(wanted.StartField, wanted.StartsAt) is { } closed
            ? closed.Sentence
            : $"{wanted.StartField} is {calendar.Time.Say(wanted.StartsAt)}: {ObstacleWords.Say(obstacle, planner.Floor, wanted.StartsAt)}";

    private static async Task<Problem?> Unfit(WorkshopDbContext db, PhasePlanner planner, Placement wanted, CancellationToken ct)
    {
        var named = await db.Resources.AsNoTracking().Where(r => r.Id == wanted.BayId || r.Id == wanted.TechnicianId).ToListAsync(ct);
        var bay = named.SingleOrDefault(r => r.Id == wanted.BayId && r.Kind == ResourceKind.Bay);
        var technician = named.SingleOrDefault(r => r.Id == wanted.TechnicianId && r.Kind == ResourceKind.Technician);
        List<FieldFault> faults =
        [
            .. Unfit("bayId", wanted.BayId, bay, "bay", planner.Needs.BayLacks),
            .. Unfit("technicianId", wanted.TechnicianId, technician, "technician", planner.Needs.TechnicianLacks),
            .. planner.MissingTools.Select(code => new FieldFault("items",
                $"items need the special tool \"{code}\", which the workshop has not; leave the item out, or enter the tool first.")),
        ];
        return faults.Count > 0 ? Problem.Impossible("resource-unfit", faults) : null;
    }

    private static IEnumerable<FieldFault> Unfit(
        string field, Guid id, Resource? found, string what, Func<Resource, IReadOnlyList<string>> lacks) => found switch
    {
        null => [new FieldFault(field, $"{field} is {id}: no {what} has it; choose one of GET /api/v1/bookings/availability.")],
        { Retired: true } => [new FieldFault(field, $"{field} is {found.Name}, which is retired; choose another {what}.")],
        _ when lacks(found) is { Count: > 0 } missing => [new FieldFault(field,
            $"{field} is {found.Name}, {(what == "bay" ? "which" : "who")} lacks {string.Join(" and ", missing)}; choose another {what}.")],
        _ => [],
    };
}
