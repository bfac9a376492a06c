using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>Reads the workshop's own time, for every use case that turns an instant into a day or a day into an instant.</summary>
internal static class WorkshopTimes
{
    public static async Task<WorkshopTime> Read(WorkshopDbContext db, CancellationToken ct) =>
        WorkshopTime.Of(await db.WorkshopProfiles.AsNoTracking().SingleAsync(ct));

    public static async Task<OpeningCalendar> ReadCalendar(WorkshopDbContext db, CancellationToken ct) =>
        new(await Read(db, ct),
            await db.OpeningHours.AsNoTracking().ToListAsync(ct),
            await db.Holidays.AsNoTracking().ToListAsync(ct));
}
