using Workshop.Web.Http;

namespace Workshop.Web.Features.Comebacks;

internal static class ComebacksApi
{
    public static void Map(RouteGroupBuilder api) =>
        api.MapGet("/comebacks", ([AsParameters] ListComebacks.Request request, Api run) => run.Read(request, ListComebacks.Handle))
            .WithTags("Job cards").RequireAuthorization(Policies.Manages);
}
