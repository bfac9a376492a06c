using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

internal static class KitsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var kit = api.MapGroup("/job-cards/{number:int}/kit").WithTags("Kits");

        kit.MapGet("/", (int number, Api run) => run.Read(new GetKit.Request(number), GetKit.Handle));
        kit.MapPost("/reservation", (int number, Api run) => run.Post(new ReserveKit.Request { Number = number }, ReserveKit.Handle));
    }
}
