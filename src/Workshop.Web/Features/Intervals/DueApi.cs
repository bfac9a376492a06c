using Workshop.Web.Http;

namespace Workshop.Web.Features.Intervals;

internal static class DueApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var due = api.MapGroup("").WithTags("Due");
        var books = due.MapGroup("").RequireAuthorization(Policies.Books);
        var manages = due.MapGroup("").RequireAuthorization(Policies.Manages);

        due.MapGet("/due", (string? after, int? take, bool? overdue, int? withinDays, int? withinKm, Api run) => run.Read(
            new ListDue.Request { After = after, Take = take, Overdue = overdue ?? false, WithinDays = withinDays, WithinKm = withinKm },
            ListDue.Handle));
        due.MapGet(
            "/due/visits",
            (string? after, int? take, bool? overdue, int? withinWeeks, int? withinKm, Guid? engineModelId, string? tool, Api run) => run.Read(
                new ListDueVisits.Request
                {
                    After = after, Take = take, Overdue = overdue ?? false, WithinWeeks = withinWeeks, WithinKm = withinKm,
                    EngineModelId = engineModelId, Tool = tool,
                },
                ListDueVisits.Handle));
        due.MapGet("/motorcycles/{id:guid}/due", (Guid id, string? after, int? take, Api run) =>
            run.Read(new ListDue.Request { MotorcycleId = id, After = after, Take = take }, ListDue.Handle));
        books.MapPost("/motorcycles/{id:guid}/put-offs", (Guid id, PutOffItem.Request body, Api run) =>
            run.Post(body with { MotorcycleId = id }, PutOffItem.Handle));
        due.MapGet("/due/recompute", (Api run) => run.Read(new GetRecompute.Request(), GetRecompute.Handle));
        manages.MapPost("/due/recompute", (Api run) => run.Post(new RequestRecompute.Request(), RequestRecompute.Handle));
    }
}
