using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

internal static class OrdersApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var reads = api.MapGroup("").WithTags("Orders");
        var orders = api.MapGroup("").WithTags("Orders").RequireAuthorization(Policies.Orders);

        reads.MapGet("/stock/projection", (int? days, bool? onlyShort, Api run) =>
            run.Read(new ListProjectedStock.Request(days, onlyShort), ListProjectedStock.Handle));
        reads.MapGet("/stock/projection/{code}", (string code, int? days, Api run) =>
            run.Read(new GetProjectedStock.Request(code, days), GetProjectedStock.Handle));

        reads.MapGet("/suppliers", (Api run) => run.Read(new ListSuppliers.Request(), ListSuppliers.Handle));
        reads.MapGet("/suppliers/{id:guid}", (Guid id, Api run) => run.Read(new GetSupplier.Request(id), GetSupplier.Handle));
        orders.MapPost("/suppliers", (AddSupplier.Request body, Api run) =>
            run.Create(body, AddSupplier.Handle, made => $"/api/v1/suppliers/{made.Id}"));
        orders.MapPut("/suppliers/{id:guid}", (Guid id, EditSupplier.Request body, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch }, EditSupplier.Handle));

        reads.MapGet("/stock/ordering/{code}", (string code, Api run) => run.Read(new GetOrdering.Request(code), GetOrdering.Handle));
        orders.MapPut("/stock/ordering/{code}", (string code, SetOrdering.Request body, Api run) =>
            run.Change(body with { PartCode = code, RowVersion = run.IfMatch }, SetOrdering.Handle));
        orders.MapPost("/stock/ordering/{code}/supplies", (string code, AddSupply.Request body, Api run) =>
            run.Create(body with { PartCode = code }, AddSupply.Handle, _ => $"/api/v1/stock/ordering/{code}"));
        orders.MapPut("/stock/ordering/{code}/supplies/{id:guid}", (string code, Guid id, EditSupply.Request body, Api run) =>
            run.Change(body with { PartCode = code, Id = id, RowVersion = run.IfMatch }, EditSupply.Handle));
        orders.MapDelete("/stock/ordering/{code}/supplies/{id:guid}", (string code, Guid id, Api run) =>
            run.Change(new RemoveSupply.Request(code, id, run.IfMatch), RemoveSupply.Handle));

        reads.MapGet("/orders/service-level", (Api run) => run.Read(new GetServiceLevel.Request(), GetServiceLevel.Handle));
        api.MapPut("/orders/service-level", (SetServiceLevel.Request body, Api run) =>
            run.Change(body with { RowVersion = run.IfMatch }, SetServiceLevel.Handle)).WithTags("Orders").RequireAuthorization(Policies.Manages);
        reads.MapGet("/orders/proposals", (int? lastsDays, bool? shims, Api run) =>
            run.Read(new ProposeOrders.Request(lastsDays, shims), ProposeOrders.Handle));

        reads.MapGet("/orders", (string? state, string? after, int? take, Api run) =>
            run.Read(new ListOrders.Request(state, after, take), ListOrders.Handle));
        reads.MapGet("/orders/{number:int}", (int number, Api run) => run.Read(new GetOrder.Request(number), GetOrder.Handle));
        orders.MapPost("/orders", (DraftOrder.Request body, Api run) =>
            run.Create(body, DraftOrder.Handle, made => $"/api/v1/orders/{made.Number}"));
        orders.MapPut("/orders/{number:int}", (int number, EditOrder.Request body, Api run) =>
            run.Change(body with { Number = number, RowVersion = run.IfMatch }, EditOrder.Handle));
        orders.MapPut("/orders/{number:int}/placing", (int number, PlaceOrder.Request body, Api run) =>
            run.Change(body with { Number = number, RowVersion = run.IfMatch }, PlaceOrder.Handle));
        orders.MapPut("/orders/{number:int}/delivery-day", (int number, SetDeliveryDay.Request body, Api run) =>
            run.Change(body with { Number = number, RowVersion = run.IfMatch }, SetDeliveryDay.Handle));
        orders.MapPut("/orders/{number:int}/closing", (int number, Api run) =>
            run.Change(new CloseOrder.Request { Number = number, RowVersion = run.IfMatch }, CloseOrder.Handle));
        api.MapPost("/orders/{number:int}/receipts", (int number, ReceiveOrder.Request body, Api run) =>
            run.Post(body with { Number = number, RowVersion = run.IfMatch }, ReceiveOrder.Handle)).WithTags("Orders").RequireAuthorization(Policies.KeepsStores);
    }
}
