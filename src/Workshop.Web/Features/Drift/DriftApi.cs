using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

internal static class DriftApi
{
    public static void Map(RouteGroupBuilder api)
    {
        api.MapGet("/motorcycles/{id:guid}/drift", (Guid id, Api run) => run.Read(new GetDrift.Request(id), GetDrift.Handle))
            .WithTags("Clearance drift");
        api.MapGet("/drift", (int? within, string? after, int? take, Api run) =>
                run.Read(new ListDrift.Request(within, after, take), ListDrift.Handle))
            .WithTags("Clearance drift").RequireAuthorization(Policies.Manages);
    }
}
