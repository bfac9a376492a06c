using Workshop.Web.Http;

namespace Workshop.Web.Features.Bays;

internal static class BaysApi
{
    public static void Map(RouteGroupBuilder api) =>
        api.MapGet("/bays", (Api run) => run.Read(new GetFloor.Request(), GetFloor.Handle)).WithTags("Bays");
}
