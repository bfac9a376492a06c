using Workshop.Web.Http;

namespace Workshop.Web.Features.CamTiming;

internal static class CamTimingApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var timing = api.MapGroup("/job-cards/{number:int}/cam-timing").WithTags("Cam timing");
        var bench = timing.MapGroup("").RequireAuthorization(Policies.Measures);

        timing.MapGet("/", (int number, Api run) => run.Read(new GetCamTiming.Request(number), GetCamTiming.Handle));
        bench.MapPost("/", (int number, RecordCamTiming.Request body, Api run) =>
            run.Post(body with { Number = number }, RecordCamTiming.Handle));
        bench.MapPost("/rechecks", (int number, ConfirmCamRecheck.Request body, Api run) =>
            run.Post(body with { Number = number }, ConfirmCamRecheck.Handle));
    }
}
