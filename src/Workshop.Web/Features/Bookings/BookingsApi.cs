using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

internal static class BookingsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var bookings = api.MapGroup("/bookings").WithTags("Bookings");
        var books = bookings.MapGroup("").RequireAuthorization(Policies.Books);

        books.MapPost("/", (BookVisit.Request body, Api run) =>
            run.Create(body, BookVisit.Handle, made => $"/api/v1/job-cards/{made.Number}"));
    }
}
