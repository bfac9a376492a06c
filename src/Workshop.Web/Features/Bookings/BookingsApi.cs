using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

internal static class BookingsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var bookings = api.MapGroup("/bookings").WithTags("Bookings");
        var books = bookings.MapGroup("").RequireAuthorization(Policies.Books);

        bookings.MapGet("/", (string? after, int? take, string? state, string? from, Api run) =>
            run.Read(new ListBookings.Request(after, take, state, from), ListBookings.Handle));
        bookings.MapGet("/availability", (string? date, Api run) =>
            run.Read(new AvailabilityOf.Request(date), AvailabilityOf.Handle));
        bookings.MapGet("/proposal", (Guid? motorcycleId, string[]? item, Api run) =>
            run.Read(new ProposeVisit.Request(motorcycleId, item is { Length: > 0 } ? item : null), ProposeVisit.Handle));
        books.MapPost("/", (BookVisit.Request body, Api run) =>
            run.Create(body, BookVisit.Handle, made => $"/api/v1/job-cards/{made.Number}"));
        books.MapPost("/slots", (FindSlots.Request body, Api run) => run.Read(body, FindSlots.Handle));
        books.MapPost("/{number:int}/move", (int number, MoveVisit.Request body, Api run) =>
            run.Post(body with { Number = number }, MoveVisit.Handle));
        books.MapPost("/{number:int}/duration", (int number, ShortenVisit.Request body, Api run) =>
            run.Post(body with { Number = number }, ShortenVisit.Handle));
        books.MapPost("/{number:int}/no-show", (int number, MarkNoShow.Request body, Api run) =>
            run.Post(body with { Number = number }, MarkNoShow.Handle));
    }
}
