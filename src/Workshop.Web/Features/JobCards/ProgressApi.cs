using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

internal static class ProgressApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var visit = api.MapGroup("/job-cards/{number:int}").WithTags("Progress");
        var tells = visit.MapGroup("").RequireAuthorization(Policies.TellsProgress);

        visit.MapGet("/progress", (int number, Api run) => run.Read(new GetProgress.Request(number), GetProgress.Handle));
        tells.MapPost("/phases", (int number, BeginPhase.Request body, Api run) =>
            run.Post(body with { Number = number }, BeginPhase.Handle));
        tells.MapPost("/engine-stops", (int number, RecordEngineStop.Request body, Api run) =>
            run.Post(body with { Number = number }, RecordEngineStop.Handle));
        tells.MapPost("/moves", (int number, MoveMotorcycle.Request body, Api run) =>
            run.Post(body with { Number = number }, MoveMotorcycle.Handle));
        tells.MapPost("/wait", (int number, WaitFor.Request body, Api run) =>
            run.Post(body with { Number = number }, WaitFor.Handle));
        visit.MapGet("/work-clock", (int number, Api run) => run.Read(new GetWorkClock.Request(number), GetWorkClock.Handle));
        tells.MapPost("/work-clock/on", (int number, ClockOn.Request body, Api run) =>
            run.Post(body with { Number = number }, ClockOn.Handle));
        tells.MapPost("/work-clock/off", (int number, ClockOff.Request body, Api run) =>
            run.Post(body with { Number = number }, ClockOff.Handle));
        tells.MapPost("/go-on", (int number, GoOn.Request body, Api run) =>
            run.Post(body with { Number = number }, GoOn.Handle));
    }
}
