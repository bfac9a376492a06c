using Workshop.Web.Http;

namespace Workshop.Web.Features.Clearances;

internal static class ClearancesApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var readings = api.MapGroup("/job-cards/{number:int}/readings").WithTags("Clearances");
        var bench = readings.MapGroup("").RequireAuthorization(Policies.Measures);

        readings.MapGet("/", (int number, Api run) => run.Read(new GetReadings.Request(number), GetReadings.Handle));
        bench.MapPost("/", (int number, RecordReadings.Request body, Api run) =>
            run.Post(body with { Number = number }, RecordReadings.Handle));
        bench.MapPost("/positions", (int number, ConfirmPosition.Request body, Api run) =>
            run.Post(body with { Number = number }, ConfirmPosition.Handle));
        bench.MapPost("/hand-turns", (int number, ConfirmHandTurns.Request body, Api run) =>
            run.Post(body with { Number = number }, ConfirmHandTurns.Handle));
        bench.MapPost("/as-left-witnesses", (int number, ConfirmAsLeft.Request body, Api run) =>
            run.Post(body with { Number = number }, ConfirmAsLeft.Handle));
    }
}
