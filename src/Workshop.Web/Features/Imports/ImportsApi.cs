using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

internal static class ImportsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        api.MapPost("/imports/readings", async (HttpRequest http, bool? dryRun, string? fileName, Api run) =>
                await run.Post(await WorksheetBody.Read(http, dryRun, fileName), ImportReadings.Handle))
            .Accepts<ImportReadings.Request>(WorksheetBody.Json, WorksheetBody.Csv)
            .WithTags("Imports").RequireAuthorization(Policies.Manages);
    }
}
