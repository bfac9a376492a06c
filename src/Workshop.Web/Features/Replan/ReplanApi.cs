using Workshop.Web.Http;

namespace Workshop.Web.Features.Replan;

internal static class ReplanApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var replan = api.MapGroup("/bookings/replan").WithTags("Bookings").RequireAuthorization(Policies.Manages);

        replan.MapGet("/", (string? week, int? seconds, Api run) => run.Read(new ProposeWeek.Request(week, seconds), ProposeWeek.Handle));
        replan.MapPost("/", (AcceptReplan.Request body, Api run) => run.Post(body, AcceptReplan.Handle));
    }
}
