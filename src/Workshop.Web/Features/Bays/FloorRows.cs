using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Bays;

/// <summary>What was read of the floor, put together place by place and technician by technician.</summary>
/// <param name="Resources">Bays, parking places and technicians by id.</param>
/// <param name="Steps">Of the visits that are worked on, by number.</param>
/// <param name="Ahead">What is taken from now on, in order of time within a resource.</param>
/// <param name="Away">Absences that hold now, by resource.</param>
internal sealed record FloorRows(
    Instant Now,
    IReadOnlyList<VisitHere> Here,
    IReadOnlyDictionary<Guid, Resource> Resources,
    IReadOnlyDictionary<int, string> Steps,
    IReadOnlyList<Occupied.Taken> Ahead,
    IReadOnlyDictionary<Guid, Absence> Away)
{
    /// <param name="stands">Usually one; where two were pushed into one place, the last that came.</param>
    public GetFloor.Place PlaceOf(Resource place, IReadOnlyList<VisitHere> stands)
    {
        var one = stands.OrderBy(v => v.Since).LastOrDefault();
        var next = Ahead.FirstOrDefault(t => t.Resource.Id == place.Id && stands.All(s => s.Number != t.By));
        return new GetFloor.Place(
            place.Id, place.Kind, place.Name, place.Capabilities, one is null ? null : StandingOf(one),
            next is null ? null : ComingOf(next), AwayOf(place.Id));
    }

    public GetFloor.Standing StandingOf(VisitHere visit) => new(
        visit.Number,
        visit.Registration,
        visit.Motorcycle,
        visit.Phase,
        visit.Since,
        Worker(visit) is { } who ? Resources.GetValueOrDefault(who)?.Name : null,
        Steps.GetValueOrDefault(visit.Number),
        visit.Phase is null or VisitPhase.Arrival or VisitPhase.ColdSoak ? visit.ColdFrom : null,
        visit.Tag,
        visit.Waits is { } waits ? new GetFloor.Waiting(waits.For, waits.ExpectedUntil) : null,
        visit.ReadyAt);

    public GetFloor.TechnicianNow TechnicianOf(Resource technician)
    {
        var visit = Here.Where(v => Worker(v) == technician.Id).OrderBy(v => v.Since).LastOrDefault();
        var next = Ahead.FirstOrDefault(t => t.Resource.Id == technician.Id && t.By != visit?.Number);
        return new GetFloor.TechnicianNow(
            technician.Id,
            technician.Name,
            visit is null ? null : new GetFloor.WorksAt(
                visit.Number, visit.Registration, NameOf(visit.StandsIn(Now)), visit.Phase!.Value, visit.Since),
            AwayOf(technician.Id),
            next is null ? null : ComingOf(next));
    }

    /// <summary>Who is at it now; nobody while it soaks, cures or waits.</summary>
    private static Guid? Worker(VisitHere visit) => visit.Begun.Count > 0 ? visit.Begun[^1].TechnicianId : null;

    private string? NameOf(Guid? place) => place is { } id ? Resources.GetValueOrDefault(id)?.Name : null;

    private GetFloor.Away? AwayOf(Guid resource) =>
        Away.GetValueOrDefault(resource) is { } absence ? new GetFloor.Away(absence.Reason, absence.Span.End) : null;

    private GetFloor.Coming ComingOf(Occupied.Taken taken)
    {
        var bay = taken.Resource.Kind == ResourceKind.Technician
            ? Ahead.FirstOrDefault(t => t.By == taken.By && t.Resource.Kind == ResourceKind.Bay && t.Span.End > taken.Span.Start)?.Resource.Name
            : taken.Resource.Name;
        return new GetFloor.Coming(taken.By, taken.Motorcycle.Split(',')[0], taken.Motorcycle, taken.Phase, taken.Span.Start, bay);
    }
}
