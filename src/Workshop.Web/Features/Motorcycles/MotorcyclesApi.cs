using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

internal static class MotorcyclesApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var motorcycles = api.MapGroup("/motorcycles").WithTags("Motorcycles");
        var books = motorcycles.MapGroup("").RequireAuthorization(Policies.Books);

        motorcycles.MapGet("/", (string? after, string? search, int? take, Api run) =>
            run.Read(new ListMotorcycles.Request(after, search, take), ListMotorcycles.Handle));
        motorcycles.MapGet("/{id:guid}/due", (Guid id, string? after, int? take, Api run) =>
            run.Read(new ListDue.Request { MotorcycleId = id, After = after, Take = take }, ListDue.Handle));
        books.MapPost("/", (AddMotorcycle.Request body, Api run) =>
            run.Create(body, AddMotorcycle.Handle, made => $"/api/v1/motorcycles/{made.Id}"));
    }
}
