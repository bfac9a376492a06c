using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Resources;

/// <summary>The opening calendar, and when each resource can be taken.</summary>
internal sealed record WorkingTimes(OpeningCalendar Calendar, IReadOnlyDictionary<Guid, WorkingTime> Of)
{
    /// <param name="calendar">Of the workshop.</param>
    /// <param name="resources">The rows that matter.</param>
    /// <param name="span">Absences that overlap it are read.</param>
    public static async Task<WorkingTimes> Read(
        WorkshopDbContext db, OpeningCalendar calendar, IReadOnlyCollection<Resource> resources, Interval span, CancellationToken ct)
    {
        var hours = (await db.WorkingHours.AsNoTracking().ToListAsync(ct)).ToLookup(h => h.ResourceId);
        var breaks = (await db.WorkBreaks.AsNoTracking().ToListAsync(ct)).ToLookup(b => b.ResourceId);
        var absences = (await AbsencesDuring(db, span).ToListAsync(ct)).ToLookup(a => a.ResourceId);
        return new WorkingTimes(
            calendar, resources.ToDictionary(r => r.Id, r => new WorkingTime(calendar, hours[r.Id], breaks[r.Id], absences[r.Id])));
    }

    /// <summary>Absences that stand and overlap a span.</summary>
    public static IQueryable<Absence> AbsencesDuring(WorkshopDbContext db, Interval span) =>
        db.Absences.FromSql($"select *, xmin from absences where withdrawn_at is null and span && {span}").AsNoTracking();
}
