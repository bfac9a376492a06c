using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bays;

internal static class BaysApi
{
    public static void Map(RouteGroupBuilder api)
    {
        api.MapGet("/bays", (Api run) => run.Read(new GetFloor.Request(), GetFloor.Handle)).WithTags("Bays");
        api.MapGet("/bays/{bay:guid}", (Guid bay, int? card, Api run) => run.Read(new GetBay.Request(bay, card), GetBay.Handle)).WithTags("Bays");
        api.MapGet("/job-cards/{number:int}/steps", (int number, Api run) => run.Read(new GetBayJob.Request(number), GetBayJob.Handle)).WithTags("Bays");
        api.MapGet("/bookings/late", (Api run) => run.Read(new ListLate.Request(), ListLate.Handle)).WithTags("Bookings");
    }
}
