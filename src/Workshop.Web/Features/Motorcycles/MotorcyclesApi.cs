using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

internal static class MotorcyclesApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var motorcycles = api.MapGroup("/motorcycles").WithTags("Motorcycles");
        var books = motorcycles.MapGroup("").RequireAuthorization(Policies.Books);
        var measures = motorcycles.MapGroup("").RequireAuthorization(Policies.Measures);

        motorcycles.MapGet("/", (string? after, string? search, int? take, Api run) =>
            run.Read(new ListMotorcycles.Request(after, search, take), ListMotorcycles.Handle));
        motorcycles.MapGet("/{id:guid}", (Guid id, Api run) =>
            run.Read(new GetMotorcycle.Request(id), GetMotorcycle.Handle));
        motorcycles.MapGet("/{id:guid}/history", (Guid id, Guid? after, int? take, Api run) =>
            run.Read(new GetHistory.Request { MotorcycleId = id, After = after, Take = take }, GetHistory.Handle));
        books.MapPost("/", (AddMotorcycle.Request body, Api run) =>
            run.Create(body, AddMotorcycle.Handle, made => $"/api/v1/motorcycles/{made.Id}"));
        books.MapPut("/{id:guid}", (Guid id, EditMotorcycle.Request body, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch }, EditMotorcycle.Handle));
        books.MapPost("/{id:guid}/odometer-readings", (Guid id, RecordOdometer.Request body, Api run) =>
            run.Post(body with { MotorcycleId = id }, RecordOdometer.Handle));
        books.MapPost("/{id:guid}/odometers", (Guid id, ReplaceOdometer.Request body, Api run) =>
            run.Post(body with { MotorcycleId = id }, ReplaceOdometer.Handle));
        books.MapPost("/{id:guid}/done-items", (Guid id, RecordDoneItems.Request body, Api run) =>
            run.Post(body with { MotorcycleId = id }, RecordDoneItems.Handle));
        measures.MapPost("/{id:guid}/part-changes", (Guid id, RecordPartChange.Request body, Api run) =>
            run.Post(body with { MotorcycleId = id }, RecordPartChange.Handle));
    }
}
