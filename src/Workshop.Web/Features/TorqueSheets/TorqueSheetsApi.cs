using Workshop.Web.Http;

namespace Workshop.Web.Features.TorqueSheets;

internal static class TorqueSheetsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var sheet = api.MapGroup("/job-cards/{number:int}/torque-sheet").WithTags("Torque sheets");

        sheet.MapGet("/", (int number, Api run) => run.Read(new GetTorqueSheet.Request(number), GetTorqueSheet.Handle));
        sheet.MapGet("/{fastenerCode}/wrenches", (int number, string fastenerCode, Guid? wrenchId, Guid? adapterId, decimal? adapterAngleDegrees, Api run) =>
            run.Read(new GetWrenches.Request(number, fastenerCode, wrenchId, adapterId, adapterAngleDegrees), GetWrenches.Handle));
        sheet.MapPost("/ticks", (int number, TickFastener.Request body, Api run) =>
                run.Post(body with { Number = number }, TickFastener.Handle))
            .RequireAuthorization(Policies.Measures);
        sheet.MapPost("/witnesses", (int number, WitnessTick.Request body, Api run) =>
                run.Post(body with { Number = number }, WitnessTick.Handle))
            .RequireAuthorization(Policies.Measures);
    }
}
