using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Resources;

/// <summary>When each resource is there.</summary>
internal static class WorkingTimes
{
    /// <param name="days">For which it is laid out.</param>
    public static async Task<IReadOnlyDictionary<Guid, WorkingTime>> Read(
        WorkshopDbContext db, OpeningCalendar calendar, IReadOnlyCollection<Resource> resources, DateInterval days, CancellationToken ct)
    {
        var span = new Interval(calendar.Time.WholeDay(days.Start).Start, calendar.Time.WholeDay(days.End).End);
        var hours = (await db.WorkingHours.AsNoTracking().ToListAsync(ct)).ToLookup(h => h.ResourceId);
        var breaks = (await db.WorkBreaks.AsNoTracking().ToListAsync(ct)).ToLookup(b => b.ResourceId);
        var absences = (await AbsencesDuring(db, span).ToListAsync(ct)).ToLookup(a => a.ResourceId);
        var opening = new OpeningDays(calendar, days);
        return resources.ToDictionary(r => r.Id, r => WorkingTime.Of(r, opening, days, hours[r.Id], [.. breaks[r.Id]], absences[r.Id]));
    }

    /// <summary>Absences that stand and overlap a span.</summary>
    public static IQueryable<Absence> AbsencesDuring(WorkshopDbContext db, Interval span) =>
        db.Absences.FromSql($"select *, xmin from absences where withdrawn_at is null and span && {span}").AsNoTracking();
}
