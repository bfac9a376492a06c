using Workshop.Web.Http;

namespace Workshop.Web.Features.TorqueSheets;

internal static class TorqueSheetsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var sheet = api.MapGroup("/job-cards/{number:int}/torque-sheet").WithTags("Torque sheets");

        sheet.MapGet("/", (int number, Api run) => run.Read(new GetTorqueSheet.Request(number), GetTorqueSheet.Handle));
        sheet.MapPost("/ticks", (int number, TickFastener.Request body, Api run) =>
                run.Post(body with { Number = number }, TickFastener.Handle))
            .RequireAuthorization(Policies.Measures);
    }
}
