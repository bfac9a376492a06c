using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;

namespace Workshop.Web.Features.JobCards;

/// <summary>Who measured and when, where somebody says so: within the visit, and one of the workshop's staff.</summary>
internal static class WhoAndWhen
{
    public static async Task<IReadOnlyList<FieldFault>> FaultsOf(
        WorkshopDbContext db, OpenCard open, WorkshopTime time, Instant measuredAt, Guid? measuredBy, Instant now, CancellationToken ct)
    {
        var faults = new List<FieldFault>();
        var cameIn = open.CheckIn!.CheckedInAt;
        if (measuredAt > now || measuredAt < cameIn)
        {
            faults.Add(new FieldFault("measuredAt",
                $"measuredAt is {time.Say(measuredAt)}: from the check-in at {time.Say(cameIn)} until now, {time.Say(now)}, is allowed."));
        }

        if (measuredBy is { } by && !await db.People.AnyAsync(p => p.Id == by && p.IsStaff, ct))
        {
            faults.Add(new FieldFault("measuredBy", $"measuredBy is {by}: it is nobody of the workshop's staff."));
        }

        return faults;
    }
}
