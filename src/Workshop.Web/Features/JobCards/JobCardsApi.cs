using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

internal static class JobCardsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var cards = api.MapGroup("/job-cards").WithTags("Job cards");

        cards.MapGet("/{number:int}", (int number, Api run) => run.Read(new GetJobCard.Request(number), GetJobCard.Handle));
        cards.MapPost("/{number:int}/cancel", (int number, CancelBooking.Request body, Api run) =>
            run.Post(body with { Number = number }, CancelBooking.Handle)).RequireAuthorization(Policies.Books);
        cards.MapPost("/{number:int}/check-in", (int number, CheckInMotorcycle.Request body, Api run) =>
            run.Post(body with { Number = number }, CheckInMotorcycle.Handle)).RequireAuthorization(Policies.ChecksIn);
        cards.MapPost("/{number:int}/items/{code}/start", (int number, string code, Api run) =>
            run.Post(new StartItem.Request { Number = number, Code = code }, StartItem.Handle)).RequireAuthorization(Policies.Measures);
    }
}
