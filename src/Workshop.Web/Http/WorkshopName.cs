using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;

namespace Workshop.Web.Http;

/// <summary>The workshop that this database belongs to, read once a request for the head of the page.</summary>
public sealed class WorkshopName(WorkshopDbContext db)
{
    private WorkshopProfile? read;

    public async Task<WorkshopProfile?> Get() =>
        read ??= await db.WorkshopProfiles.AsNoTracking().SingleOrDefaultAsync();
}
