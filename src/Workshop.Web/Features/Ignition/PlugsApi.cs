using Workshop.Web.Http;

namespace Workshop.Web.Features.Ignition;

internal static class PlugsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var plugs = api.MapGroup("/job-cards/{number:int}/plugs").WithTags("Compression and plugs");
        plugs.MapGet("/", (int number, Api run) => run.Read(new GetPlugs.Request(number), GetPlugs.Handle));
        plugs.MapPost("/", (int number, RecordPlugs.Request body, Api run) =>
            run.Post(body with { Number = number }, RecordPlugs.Handle)).RequireAuthorization(Policies.Measures);
    }
}
