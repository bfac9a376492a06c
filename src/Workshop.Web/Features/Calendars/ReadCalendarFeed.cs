using System.Security.Cryptography;
using System.Text;
using Microsoft.Net.Http.Headers;
using NodaTime;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Calendars;

/// <summary>
/// Answers a calendar program, which signs in nowhere: whoever has the link reads it. A wrong link and a revoked one are
/// answered alike. The tag is a digest of the text, so an unchanged calendar is not sent again.
/// </summary>
internal static class ReadCalendarFeed
{
    public static async Task<IResult> Handle(
        string secret, HttpContext http, WorkshopDbContext db, IClock clock, CancellationToken ct)
    {
        if (await FeedContent.Find(db, secret, clock.GetCurrentInstant(), ct) is not { } content)
        {
            return TypedResults.NotFound();
        }

        // Private, but a client may keep it and ask whether it still holds.
        http.Response.Headers.CacheControl = "private, no-cache";
        var text = Encoding.UTF8.GetBytes(CalendarText.Write(content));
        var tag = new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(text))}\"");
        return TypedResults.Bytes(text, CalendarText.ContentType, entityTag: tag);
    }
}
