using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

internal static class KitsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var card = api.MapGroup("/job-cards/{number:int}").WithTags("Kits");

        card.MapGet("/kit/", (int number, Api run) => run.Read(new GetKit.Request(number), GetKit.Handle));
        card.MapPost("/kit/reservation", (int number, Api run) => run.Post(new ReserveKit.Request { Number = number }, ReserveKit.Handle));
        card.MapPost("/kit/substitutions", (int number, SubstitutePart.Request body, Api run) =>
            run.Post(body with { Number = number }, SubstitutePart.Handle)).RequireAuthorization(Policies.KeepsStores);
        card.MapGet("/pick-list", (int number, Api run) => run.Read(new GetPickList.Request(number), GetPickList.Handle));
        card.MapPost("/pick-list/picks", (int number, PickParts.Request body, Api run) =>
            run.Post(body with { Number = number }, PickParts.Handle)).RequireAuthorization(Policies.KeepsStores);
        card.MapPost("/pick-list/returns", (int number, ReturnParts.Request body, Api run) =>
            run.Post(body with { Number = number }, ReturnParts.Handle)).RequireAuthorization(Policies.KeepsStores);
        card.MapGet("/seals", (int number, Api run) => run.Read(new GetSeals.Request(number), GetSeals.Handle));
        card.MapPost("/seals/inspections", (int number, InspectSeals.Request body, Api run) =>
            run.Post(body with { Number = number }, InspectSeals.Handle)).RequireAuthorization(Policies.Measures);

        api.MapGet("/kits/shortages", (Api run) => run.Read(new ListShortages.Request(), ListShortages.Handle)).WithTags("Kits");
    }
}
