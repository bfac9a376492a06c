using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

internal static class ImportsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var imports = api.MapGroup("/imports").WithTags("Imports").RequireAuthorization(Policies.Manages);
        imports.MapPost("/readings", async (HttpRequest http, bool? dryRun, string? fileName, Api run) =>
            {
                var file = await FileBody.Read(http, dryRun, fileName);
                return await run.Post(
                    new ImportReadings.Request { FileName = file.FileName, Csv = file.Csv, DryRun = file.DryRun }, ImportReadings.Handle);
            })
            .Accepts<ImportReadings.Request>(FileBody.JsonType, FileBody.CsvType);
        imports.MapPost("/history", async (HttpRequest http, bool? dryRun, string? fileName, Api run) =>
            {
                var file = await FileBody.Read(http, dryRun, fileName);
                return await run.Post(
                    new ImportHistory.Request { FileName = file.FileName, Csv = file.Csv, DryRun = file.DryRun }, ImportHistory.Handle);
            })
            .Accepts<ImportHistory.Request>(FileBody.JsonType, FileBody.CsvType);
        api.MapPost("/imports/goods-in", async (HttpRequest http, bool? dryRun, string? fileName, Api run) =>
            {
                var file = await FileBody.Read(http, dryRun, fileName);
                return await run.Post(
                    new ImportGoodsIn.Request { FileName = file.FileName, Csv = file.Csv, DryRun = file.DryRun }, ImportGoodsIn.Handle);
            })
            .WithTags("Imports").RequireAuthorization(Policies.KeepsStores)
            .Accepts<ImportGoodsIn.Request>(FileBody.JsonType, FileBody.CsvType);
    }
}
