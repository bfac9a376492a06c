using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

internal static class ShimsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var card = api.MapGroup("/job-cards/{number:int}").WithTags("Shims");
        var bench = card.MapGroup("").RequireAuthorization(Policies.Measures);

        card.MapGet("/shim-plan", (int number, Api run) => run.Read(new GetShimPlan.Request(number), GetShimPlan.Handle));
        bench.MapPost("/shim-plan", (int number, ChooseShimPlan.Request body, Api run) =>
            run.Post(body with { Number = number }, ChooseShimPlan.Handle));
        bench.MapPost("/shims", (int number, RecordShims.Request body, Api run) =>
            run.Post(body with { Number = number }, RecordShims.Handle));

        var box = api.MapGroup("/shims").WithTags("Shims");
        var stores = box.MapGroup("").RequireAuthorization(Policies.KeepsStores);
        var manager = box.MapGroup("").RequireAuthorization(Policies.Manages);

        box.MapGet("/", (string? partCode, decimal? fromMm, decimal? toMm, string? condition, string? where, int? jobCard, string? after, int? take, Api run) =>
            run.Read(new ListShims.Request(partCode, fromMm, toMm, condition, where, jobCard, after, take), ListShims.Handle));
        box.MapGet("/{id:guid}", (Guid id, Api run) => run.Read(new GetShim.Request(id), GetShim.Handle));
        box.MapGet("/boxes", (Api run) => run.Read(new ListShimBoxes.Request(), ListShimBoxes.Handle));
        box.MapGet("/boxes/{partCode}", (string partCode, Api run) => run.Read(new GetShimBox.Request(partCode), GetShimBox.Handle));
        box.MapGet("/policy", (Api run) => run.Read(new GetUsedShimPolicy.Request(), GetUsedShimPolicy.Handle));
        stores.MapPost("/receipts", (ReceiveShims.Request body, Api run) => run.Post(body, ReceiveShims.Handle));
        stores.MapPost("/counts", (CountShims.Request body, Api run) => run.Post(body, CountShims.Handle));
        stores.MapPost("/{id:guid}/put-away", (Guid id, PutShimAway.Request body, Api run) => run.Post(body with { Id = id }, PutShimAway.Handle));
        stores.MapPost("/{id:guid}/scrap", (Guid id, ScrapShim.Request body, Api run) => run.Post(body with { Id = id }, ScrapShim.Handle));
        manager.MapGet("/stocking", (string? partCode, int? months, decimal? serviceLevel, decimal? missingCosts, decimal? leftCosts, decimal? shareThatComes, Api run) =>
            run.Read(new GetStocking.Request(partCode, months, serviceLevel, missingCosts, leftCosts, shareThatComes), GetStocking.Handle));
        manager.MapPost("/policy", (SetUsedShimPolicy.Request body, Api run) => run.Post(body, SetUsedShimPolicy.Handle));
        manager.MapPost("/series", (AddShimSeries.Request body, Api run) =>
            run.Create(body, AddShimSeries.Handle, added => $"/api/v1/shims/boxes/{Uri.EscapeDataString(added.PartCode)}"));
    }
}
