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
        api.MapGet("/motorcycles/{id:guid}/chain-wear", (Guid id, Api run) => run.Read(new GetChainWear.Request(id), GetChainWear.Handle))
            .WithTags("Cam timing");
        api.MapGet("/engine-models/{id:guid}/chain-wear", (Guid id, Api run) => run.Read(new ListChainWear.Request(id), ListChainWear.Handle))
            .WithTags("Cam timing");
    }
}
