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
        books.MapPost("/", (AddMotorcycle.Request body, Api run) =>
            run.Create(body, AddMotorcycle.Handle, made => $"/api/v1/motorcycles/{made.Id}"));
    }
}
