using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

internal static class ShimsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var card = api.MapGroup("/job-cards/{number:int}").WithTags("Shims");
        var bench = card.MapGroup("").RequireAuthorization(Policies.Measures);

        card.MapGet("/shim-plan", (int number, bool? all, Api run) =>
            run.Read(new GetShimPlan.Request(number, all ?? false), GetShimPlan.Handle));
        bench.MapPost("/shims", (int number, RecordShims.Request body, Api run) =>
            run.Post(body with { Number = number }, RecordShims.Handle));
    }
}
