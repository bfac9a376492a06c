using Workshop.Web.Http;

namespace Workshop.Web.Features.Arrivals;

internal static class ArrivalsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var arrival = api.MapGroup("/job-cards/{number:int}/arrival").WithTags("Job cards");
        arrival.MapGet("/", (int number, Api run) => run.Read(new GetArrival.Request(number), GetArrival.Handle));
        arrival.MapPost("/", (int number, RecordArrival.Request body, Api run) =>
            run.Post(body with { Number = number }, RecordArrival.Handle)).RequireAuthorization(Policies.ChecksIn);
    }
}
