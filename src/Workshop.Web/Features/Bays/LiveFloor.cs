using Microsoft.AspNetCore.Http.Features;
using Workshop.Web.Hosting;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bays;

/// <summary>
/// Server-sent events (WHATWG HTML, section 9.2) that say when to look at the floor again: <c>look</c> after a change,
/// <c>blind</c> while the service itself cannot hear the database. No event carries anything, so none can be missed for good.
/// </summary>
internal static class LiveFloor
{
    public const string Address = "/bays/live";

    /// <summary>Proxies close what is silent for long; a comment keeps them from it.</summary>
    private static readonly TimeSpan Heartbeat = TimeSpan.FromSeconds(15);

    /// <summary>The browser comes back by itself, and its sign-in is then looked at again.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    private const int RetryMilliseconds = 2000;

    public static void Map(IEndpointRouteBuilder app) =>
        app.MapGet(Address, Stream).RequireAuthorization(Policies.Reads).ExcludeFromDescription();

    /// <param name="seen">The news before which the page was read; <c>Last-Event-ID</c> of a browser that comes back counts more.</param>
    private static async Task Stream(HttpContext http, FloorNews floor, IHostApplicationLifetime life, string? seen)
    {
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(http.RequestAborted, life.ApplicationStopping);
        ending.CancelAfter(Longest);
        using var watch = floor.Watch();
        var last = http.Request.Headers["Last-Event-ID"].ToString() is { Length: > 0 } id ? id : seen;
        http.Response.ContentType = "text/event-stream";
        http.Response.Headers["X-Accel-Buffering"] = "no";
        http.Features.Get<IHttpResponseBodyFeature>()?.DisableBuffering();
        try
        {
            var current = floor.Current;
            await Write(http, $"retry: {RetryMilliseconds}\n\n{(last == current ? "" : Event(new FloorNewsItem(current, Blind: false)))}", ending.Token);
            while (true)
            {
                await Write(http, await Next(watch, ending.Token) is { } news ? Event(news) : ": nothing new\n\n", ending.Token);
            }
        }
        catch (OperationCanceledException) when (ending.IsCancellationRequested)
        {
            // The browser went, the service stops, or it is time to come again: the answer ends here.
        }
    }

    /// <summary>The next news, or nothing when it is time for a sign of life.</summary>
    private static async Task<FloorNewsItem?> Next(FloorWatch watch, CancellationToken ct)
    {
        using var beat = CancellationTokenSource.CreateLinkedTokenSource(ct);
        beat.CancelAfter(Heartbeat);
        try
        {
            return await watch.News.ReadAsync(beat.Token);
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            return null;
        }
    }

    private static string Event(FloorNewsItem news) =>
        $"id: {news.Id}\nevent: {(news.Blind ? "blind" : "look")}\ndata: {news.Id}\n\n";

    private static async Task Write(HttpContext http, string text, CancellationToken ct)
    {
        await http.Response.WriteAsync(text, ct);
        await http.Response.Body.FlushAsync(ct);
    }
}
