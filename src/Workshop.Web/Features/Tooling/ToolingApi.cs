using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

internal static class ToolingApi
{
    public static void Map(RouteGroupBuilder api)
    {
        api.MapGet("/instruments", (string? after, int? take, string? kind, Api run) =>
            run.Read(new ListInstruments.Request(after, take, kind), ListInstruments.Handle)).WithTags("Tooling");
        api.MapGet("/special-tools", (Api run) =>
            run.Read(new ListSpecialTools.Request(), ListSpecialTools.Handle)).WithTags("Tooling");
    }
}
