using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

internal static class OrdersApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var projection = api.MapGroup("/stock/projection").WithTags("Orders");

        projection.MapGet("/", (int? days, bool? onlyShort, Api run) =>
            run.Read(new ListProjectedStock.Request(days, onlyShort), ListProjectedStock.Handle));
        projection.MapGet("/{code}", (string code, int? days, Api run) =>
            run.Read(new GetProjectedStock.Request(code, days), GetProjectedStock.Handle));
    }
}
