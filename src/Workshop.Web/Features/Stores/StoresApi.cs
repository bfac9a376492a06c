using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

internal static class StoresApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var stock = api.MapGroup("/stock").WithTags("Stores");

        stock.MapGet("/", (string? after, string? search, int? take, string? kind, Api run) =>
            run.Read(new ListStock.Request(after, search, take, kind), ListStock.Handle));
        stock.MapGet("/places", (Api run) => run.Read(new ListPlaces.Request(), ListPlaces.Handle));
        stock.MapPost("/receipts", (ReceiveGoods.Request body, Api run) => run.Post(body, ReceiveGoods.Handle))
            .RequireAuthorization(Policies.KeepsStores);
        stock.MapGet("/deliveries", (Api run) => run.Read(new ListDeliveries.Request(), ListDeliveries.Handle));
        stock.MapPost("/deliveries", (ExpectDelivery.Request body, Api run) => run.Post(body, ExpectDelivery.Handle))
            .RequireAuthorization(Policies.KeepsStores);
        stock.MapPost("/deliveries/{id:guid}/closing", (Guid id, Api run) => run.Post(new CloseDelivery.Request { Id = id }, CloseDelivery.Handle))
            .RequireAuthorization(Policies.KeepsStores);
    }
}
