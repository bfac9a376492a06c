using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>One bay, technician, tool or place, with hours, breaks and absences, and the visits that stand wrong with it.</summary>
public static class GetResource
{
    /// <summary>Absences that ended longer ago are history.</summary>
    private static readonly Duration LookedBack = Duration.FromDays(60);

    public sealed record Request(Guid Id);

    /// <param name="AsOpeningHours">A technician without hours of his own works whenever the workshop is open.</param>
    /// <param name="Days">Weekdays with hours or breaks; empty for what is no technician.</param>
    /// <param name="Absences">From two months ago on, withdrawn ones too.</param>
    /// <param name="Standing">Booked visits that an absence or the hours no longer leave room for.</param>
    public sealed record Answer(
        ListResources.Row Resource,
        bool AsOpeningHours,
        IReadOnlyList<Day> Days,
        IReadOnlyList<Away> Absences,
        IReadOnlyList<StandingVisit> Standing) : IHasVersion
    {
        public uint RowVersion => Resource.RowVersion;
    }

    public sealed record Day(IsoDayOfWeek Weekday, LocalTime? StartsAt, LocalTime? EndsAt, IReadOnlyList<Break> Breaks);

    public sealed record Break(LocalTime StartsAt, LocalTime EndsAt);

    public sealed record Away(
        Guid Id, Instant StartsAt, Instant EndsAt, AbsenceReason Reason, string EnteredBy, Instant? WithdrawnAt, uint RowVersion);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var row = (await ListResources.Rows(db, db.Resources.AsNoTracking().Where(r => r.Id == request.Id), ct)).SingleOrDefault();
        if (row is null)
        {
            return Problem.NotFound($"Resource {request.Id}");
        }

        var now = clock.GetCurrentInstant();
        var hours = await db.WorkingHours.AsNoTracking().Where(h => h.ResourceId == row.Id).ToListAsync(ct);
        var breaks = await db.WorkBreaks.AsNoTracking().Where(b => b.ResourceId == row.Id).OrderBy(b => b.StartsAt).ToListAsync(ct);
        var absences = await (
            from absence in db.Absences.AsNoTracking()
            join person in db.People on absence.EnteredBy equals person.Id
            where absence.ResourceId == row.Id
            select new { absence, person.Name, Version = EF.Property<uint>(absence, MappingExtensions.RowVersion) }).ToListAsync(ct);
        return new Answer(
            row,
            hours.Count == 0,
            [.. Week.Days
                .Select(d => (Weekday: d, Hours: hours.SingleOrDefault(h => h.Weekday == d), Breaks: breaks.Where(b => b.Weekday == d).ToList()))
                .Where(d => d.Hours is not null || d.Breaks.Count > 0)
                .Select(d => new Day(d.Weekday, d.Hours?.StartsAt, d.Hours?.EndsAt, [.. d.Breaks.Select(b => new Break(b.StartsAt, b.EndsAt))]))],
            [.. absences.Where(a => a.absence.Span.End > now - LookedBack).OrderBy(a => a.absence.Span.Start)
                .Select(a => new Away(
                    a.absence.Id, a.absence.Span.Start, a.absence.Span.End, a.absence.Reason, a.Name, a.absence.WithdrawnAt, a.Version))],
            await StandingVisits.Read(db, row.Id, now, ct));
    }
}
