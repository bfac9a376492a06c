using Workshop.Web.Http;

namespace Workshop.Web.Features.Calendars;

internal static class CalendarsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var feeds = api.MapGroup("/calendar-feeds").WithTags("Calendars");

        feeds.MapGet("/", (Api run) => run.Read(new ListCalendarFeeds.Request(), ListCalendarFeeds.Handle));
        feeds.MapPost("/", (CreateCalendarFeed.Request body, Api run) =>
            run.Create(body, CreateCalendarFeed.Handle, CreateCalendarFeed.Show, made => $"/api/v1/calendar-feeds/{made.Id}"));
        feeds.MapPost("/{id:guid}/revocation", (Guid id, Api run) => run.Post(new RevokeCalendarFeed.Request(id), RevokeCalendarFeed.Handle));
    }

    /// <summary>The link itself, outside of the API: a calendar program knows nothing of tokens.</summary>
    public static void MapCalendarLinks(this IEndpointRouteBuilder app) =>
        app.MapMethods("/calendar/{secret}.ics", [HttpMethods.Get, HttpMethods.Head], ReadCalendarFeed.Handle)
            .AllowAnonymous().RequireRateLimiting(Guards.CalendarLimit).ExcludeFromDescription();
}
