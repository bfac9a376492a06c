using Workshop.Web.Http;

namespace Workshop.Web.Features.Utilisation;

internal static class UtilisationApi
{
    public static void Map(RouteGroupBuilder api) =>
        api.MapGroup("/utilisation").WithTags("Utilisation").RequireAuthorization(Policies.Manages)
            .MapGet("/", (string? from, string? until, Api run) => run.Read(new GetUtilisation.Request(from, until), GetUtilisation.Handle));
}
