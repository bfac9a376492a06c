using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

internal static class StoresApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var stock = api.MapGroup("/stock").WithTags("Stores");
        var keeps = stock.MapGroup("").RequireAuthorization(Policies.KeepsStores);
        var manages = stock.MapGroup("").RequireAuthorization(Policies.Manages);

        stock.MapGet("/", (string? after, string? search, int? take, string? kind, string? place, string? show, Api run) =>
            run.Read(new ListStock.Request(after, search, take, kind, place, show), ListStock.Handle));
        stock.MapGet("/codes/{code}", (string code, Api run) => run.Read(new ReadCode.Request(code), ReadCode.Handle));
        stock.MapGet("/expiring", (int? withinDays, Api run) => run.Read(new ListExpiring.Request(withinDays), ListExpiring.Handle));
        keeps.MapPost("/receipts", (ReceiveGoods.Request body, Api run) => run.Post(body, ReceiveGoods.Handle));
        keeps.MapPost("/moves", (MoveStock.Request body, Api run) => run.Post(body, MoveStock.Handle));
        keeps.MapPost("/scrappings", (ScrapStock.Request body, Api run) => run.Post(body, ScrapStock.Handle));
        keeps.MapPost("/returns", (ReturnToStock.Request body, Api run) => run.Post(body, ReturnToStock.Handle));

        stock.MapGet("/deliveries", (Api run) => run.Read(new ListDeliveries.Request(), ListDeliveries.Handle));
        keeps.MapPost("/deliveries", (ExpectDelivery.Request body, Api run) => run.Post(body, ExpectDelivery.Handle));
        keeps.MapPost("/deliveries/{id:guid}/closing", (Guid id, Api run) => run.Post(new CloseDelivery.Request { Id = id }, CloseDelivery.Handle));

        stock.MapGet("/places", (bool? retired, Api run) => run.Read(new ListPlaces.Request(retired ?? false, CountParts: true), ListPlaces.Handle));
        stock.MapGet("/places/{code}", (string code, string? after, int? take, Api run) => run.Read(new GetPlace.Request(code, after, take), GetPlace.Handle));
        keeps.MapPost("/places", (AddPlace.Request body, Api run) => run.Create(body, AddPlace.Handle, made => $"/api/v1/stock/places/{Uri.EscapeDataString(made.Code)}"));
        keeps.MapPut("/places/{id:guid}", (Guid id, EditPlace.Request body, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch }, EditPlace.Handle));

        stock.MapGet("/counts", (Api run) => run.Read(new ListCounts.Request(), ListCounts.Handle));
        stock.MapGet("/counts/{id:guid}", (Guid id, Api run) => run.Read(new GetCount.Request(id), GetCount.Handle));
        keeps.MapPost("/counts", (StartCount.Request body, Api run) => run.Create(body, StartCount.Handle, made => $"/api/v1/stock/counts/{made.Id}"));
        keeps.MapPost("/counts/{id:guid}/lines", (Guid id, CountParts.Request body, Api run) => run.Post(body with { CountId = id }, CountParts.Handle));
        keeps.MapPost("/counts/{id:guid}/rest", (Guid id, Api run) => run.Post(new CountRestAsNone.Request { CountId = id }, CountRestAsNone.Handle));
        keeps.MapPost("/counts/{id:guid}/reasons", (Guid id, ExplainDifference.Request body, Api run) =>
            run.Post(body with { CountId = id }, ExplainDifference.Handle));
        keeps.MapPut("/counts/{id:guid}/closing", (Guid id, CloseCount.Request body, Api run) =>
            run.Change(body with { CountId = id, RowVersion = run.IfMatch }, CloseCount.Handle));
        manages.MapGet("/check", (Api run) => run.Read(new CheckLedger.Request(), CheckLedger.Handle));

        stock.MapGet("/parts/{code}", (string code, Api run) => run.Read(new GetPart.Request(code), GetPart.Handle));
        stock.MapGet("/parts/{code}/ledger", (string code, Guid? after, int? take, string? kind, Api run) =>
            run.Read(new ListLedger.Request(code, after, take, kind), ListLedger.Handle));
        keeps.MapPost("/parts", (AddPart.Request body, Api run) => run.Create(body, AddPart.Handle, made => $"/api/v1/stock/parts/{Uri.EscapeDataString(made.Code)}"));
        keeps.MapPut("/parts/{code}", (string code, EditPart.Request body, Api run) =>
            run.Change(body with { Code = code, RowVersion = run.IfMatch }, EditPart.Handle));
        keeps.MapPut("/parts/{code}/packages", (string code, SetScanCodes.Request body, Api run) =>
            run.Change(body with { Code = code, RowVersion = run.IfMatch }, SetScanCodes.Handle));
        keeps.MapPut("/parts/{code}/alternatives", (string code, SetAlternatives.Request body, Api run) =>
            run.Change(body with { Code = code, RowVersion = run.IfMatch }, SetAlternatives.Handle));
        manages.MapPut("/parts/{code}/discontinuation", (string code, DiscontinuePart.Request body, Api run) =>
            run.Change(body with { Code = code, RowVersion = run.IfMatch }, DiscontinuePart.Handle));
        manages.MapPut("/parts/{code}/merging", (string code, MergePart.Request body, Api run) =>
            run.Change(body with { Code = code, RowVersion = run.IfMatch }, MergePart.Handle));
    }
}
