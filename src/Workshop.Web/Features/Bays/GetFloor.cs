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

/// <summary>The floor as it is now: what stands where, who works on it, what comes next.</summary>
public static class GetFloor
{
    /// <summary>How far ahead it looks for what is next.</summary>
    private static readonly Duration Ahead = Duration.FromDays(14);

    public sealed record Request;

    /// <param name="NotPlaced">Here, but nobody said or planned where.</param>
    public sealed record Answer(
        Instant At, IReadOnlyList<Place> Places, IReadOnlyList<Standing> NotPlaced, IReadOnlyList<TechnicianNow> Technicians);

    /// <param name="Stands">Nothing where it is empty.</param>
    /// <param name="Next">The next visit that has it, or one that should be here already.</param>
    /// <param name="Away">Repair, lent out.</param>
    public sealed record Place(
        Guid Id, ResourceKind Kind, string Name, IReadOnlyList<string> Capabilities, Standing? Stands, Coming? Next, Away? Away);

    /// <param name="Phase">Nothing where none was begun.</param>
    /// <param name="Step">What of the work was written down last: "as found".</param>
    /// <param name="ColdFrom">Until the work begins, where the visit needs a cold engine.</param>
    /// <param name="ReadyAt">As planned.</param>
    public sealed record Standing(
        int JobCardNumber, string Registration, string Motorcycle, VisitPhase? Phase, Instant Since, string? Technician, string? Step,
        Instant? ColdFrom, string? Tag, Waiting? Waits, Instant ReadyAt);

    public sealed record Waiting(WaitsFor For, Instant ExpectedUntil);

    public sealed record Coming(int JobCardNumber, string Registration, string Motorcycle, VisitPhase Phase, Instant From, string? Place);

    public sealed record Away(AbsenceReason Reason, Instant Until);

    /// <param name="At">What the technician is at.</param>
    public sealed record TechnicianNow(Guid Id, string Name, WorksAt? At, Away? Away, Coming? Next);

    public sealed record WorksAt(int JobCardNumber, string Registration, string? Place, VisitPhase Phase, Instant Since);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var here = await VisitsHere.Read(db, ct);
        var resources = await db.Resources.AsNoTracking().Where(r => !r.Retired && r.Kind != ResourceKind.SpecialTool).ToListAsync(ct);
        var floor = new FloorRows(
            now,
            here,
            resources.ToDictionary(r => r.Id),
            await WorkSteps.Read(db, [.. here.Where(v => v.Phase == VisitPhase.Work).Select(v => v.Number)], ct),
            await Occupied.During(db, new Interval(now, now + Ahead), ct),
            await db.Absences.FromSql($"select *, xmin from absences where withdrawn_at is null and span @> {now}").AsNoTracking()
                .ToDictionaryAsync(a => a.ResourceId, ct));
        var stands = here.Select(v => (Visit: v, Place: v.StandsIn(now))).ToList();
        return new Answer(
            now,
            [.. resources.Where(r => r.Kind is ResourceKind.Bay or ResourceKind.ParkingPlace).InOrder().Select(r => floor.PlaceOf(r, stands
                .Where(s => s.Place == r.Id).Select(s => s.Visit).ToList()))],
            [.. stands.Where(s => s.Place is null || !floor.Resources.ContainsKey(s.Place.Value)).Select(s => floor.StandingOf(s.Visit))],
            [.. resources.Where(r => r.Kind == ResourceKind.Technician).InOrder().Select(floor.TechnicianOf)]);
    }

    /// <summary>Names that end in numbers in the order of the numbers: Bay 2 before Bay 10.</summary>
    private static IEnumerable<Resource> InOrder(this IEnumerable<Resource> resources) => resources
        .OrderBy(r => r.Kind).ThenBy(r => r.Name.TrimEnd([.. "0123456789"]), StringComparer.Ordinal).ThenBy(r => r.Name.Length)
        .ThenBy(r => r.Name, StringComparer.Ordinal);
}
