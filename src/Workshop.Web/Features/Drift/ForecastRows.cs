using NodaTime;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Drift;

/// <summary>Writes anew what is expected of the valves of one engine; called by every use case that adds a reading.</summary>
internal static class ForecastRows
{
    public static Task Rewrite(WorkshopDbContext db, Guid engineId, IClock clock, CancellationToken ct) =>
        Task.CompletedTask;
}
