using Workshop.Web.Http;

namespace Workshop.Web.Features.Intervals;

internal static class DueApi
{
    public static void Map(RouteGroupBuilder api) =>
        api.MapGet("/due", (string? after, int? take, bool? overdue, int? withinDays, Api run) => run.Read(
                new ListDue.Request { After = after, Take = take, Overdue = overdue ?? false, WithinDays = withinDays },
                ListDue.Handle))
            .WithTags("Due");
}
