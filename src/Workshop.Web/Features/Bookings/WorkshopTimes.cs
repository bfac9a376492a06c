using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>Reads the workshop's own time, for every use case that turns an instant into a day or a day into an instant.</summary>
internal static class WorkshopTimes
{
    public static async Task<WorkshopTime> Read(WorkshopDbContext db, CancellationToken ct) =>
        WorkshopTime.Of(await db.WorkshopProfiles.AsNoTracking().SingleAsync(ct));
}
