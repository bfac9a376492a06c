using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

internal static class DriftApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var drift = api.MapGroup("").WithTags("Clearance drift");
        var manages = drift.MapGroup("").RequireAuthorization(Policies.Manages);

        drift.MapGet("/motorcycles/{id:guid}/drift", (Guid id, Api run) => run.Read(new GetDrift.Request(id), GetDrift.Handle));
        drift.MapGet("/job-cards/{number:int}/forecast", (int number, Api run) =>
            run.Read(new GetCardForecast.Request(number), GetCardForecast.Handle));
        manages.MapPost("/motorcycles/{id:guid}/drift/left-out-visits", (Guid id, LeaveOutVisit.Request body, Api run) =>
            run.Post(body with { MotorcycleId = id }, LeaveOutVisit.Handle));
        manages.MapGet("/drift", (int? within, Guid? engineModelId, string? side, string? after, int? take, Api run) =>
            run.Read(new ListDrift.Request(within, engineModelId, side, after, take), ListDrift.Handle));
        manages.MapPost("/drift/threshold", (SetDriftThreshold.Request body, Api run) => run.Post(body, SetDriftThreshold.Handle));
        manages.MapGet("/drift/fits", (Api run) => run.Read(new ListDriftFits.Request(), ListDriftFits.Handle));
        manages.MapGet("/engine-models/{id:guid}/drift-fit", (Guid id, Api run) => run.Read(new GetDriftFit.Request(id), GetDriftFit.Handle));
        manages.MapPost("/engine-models/{id:guid}/drift-fit", (Guid id, Api run) => run.Post(new RequestRefit.Request(id), RequestRefit.Handle));
    }
}
