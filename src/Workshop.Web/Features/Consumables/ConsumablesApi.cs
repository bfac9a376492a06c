using Workshop.Web.Http;

namespace Workshop.Web.Features.Consumables;

internal static class ConsumablesApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var sizes = api.MapGroup("/sizes").WithTags("Sizes");

        sizes.MapGet("/", (string? size, bool? groove, decimal? toleranceMm, string? material, Api run) => run.Read(
            new SearchSizes.Request { Size = size, Groove = groove ?? false, ToleranceMm = toleranceMm, Material = material }, SearchSizes.Handle));
        sizes.MapGet("/equivalents", (string? part, Api run) =>
            run.Read(new FindEquivalents.Request { Part = part }, FindEquivalents.Handle));
        sizes.MapGet("/gland", ([AsParameters] CheckGland.Request request, Api run) => run.Read(request, CheckGland.Handle));
        api.MapGet("/consumables", (string? kind, string? material, string? after, int? take, Api run) =>
            run.Read(new ListConsumables.Request(kind, material, after, take), ListConsumables.Handle)).WithTags("Sizes");
    }
}
