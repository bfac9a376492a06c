using Workshop.Web.Http;

namespace Workshop.Web.Features.Compression;

internal static class CompressionApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var compression = api.MapGroup("/job-cards/{number:int}/compression").WithTags("Compression and plugs");
        compression.MapGet("/", (int number, Api run) => run.Read(new GetCompression.Request(number), GetCompression.Handle));
        compression.MapPost("/", (int number, RecordCompression.Request body, Api run) =>
            run.Post(body with { Number = number }, RecordCompression.Handle)).RequireAuthorization(Policies.Measures);
    }
}
