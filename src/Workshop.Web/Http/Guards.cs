using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.StaticFiles;
using NodaTime;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Http;

/// <summary>What stands before every request: headers, rate limits, the API's rule against forged requests.</summary>
internal static class Guards
{
    public const string SignInLimit = "sign-in";
    public const string CalendarLimit = "calendar";
    public const string RecordLimit = "record";
    public const string ApiHeader = "X-Workshop-Request";
    public const string TimeHeader = "X-Workshop-Time";

    private const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public static void AddRateLimits(this IServiceCollection services, IConfiguration configuration)
    {
        var signInsPerMinute = configuration.GetValue("Workshop:SignInsPerMinute", 10);
        var calendarsPerMinute = configuration.GetValue("Workshop:CalendarsPerMinute", 60);
        var recordsPerMinute = configuration.GetValue("Workshop:RecordsPerMinute", 120);
        var requestsPerSecond = configuration.GetValue("Workshop:RequestsPerSecond", 200);
        services.AddRateLimiter(o =>
        {
            o.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            o.OnRejected = (context, _) =>
            {
                context.HttpContext.Response.Headers.RetryAfter = "60";
                return ValueTask.CompletedTask;
            };
            foreach (var (policy, perMinute) in new[] { (SignInLimit, signInsPerMinute), (CalendarLimit, calendarsPerMinute), (RecordLimit, recordsPerMinute) })
            {
                // The page of the sign-in is looked at freely: only tries count, or colleagues behind the same router would be shut out.
                o.AddPolicy(policy, http => policy == SignInLimit && !HttpMethods.IsPost(http.Request.Method)
                    ? RateLimitPartition.GetNoLimiter("")
                    : RateLimitPartition.GetFixedWindowLimiter(AddressOf(http), _ => new FixedWindowRateLimiterOptions { PermitLimit = perMinute, Window = TimeSpan.FromMinutes(1) }));
            }

            o.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(http =>
                RateLimitPartition.GetTokenBucketLimiter(
                    http.User.Identity?.Name ?? AddressOf(http), _ => new TokenBucketRateLimiterOptions
                    {
                        TokenLimit = requestsPerSecond * 5,
                        TokensPerPeriod = requestsPerSecond,
                        ReplenishmentPeriod = TimeSpan.FromSeconds(1),
                    }));
        });
    }

    public static void UseSecurityHeaders(this IApplicationBuilder app) => app.Use((http, next) =>
    {
        var headers = http.Response.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["X-Request-Id"] = http.TraceIdentifier;
        if (SessionAuthentication.IsApi(http.Request))
        {
            // To the millisecond, which Date lacks: what a device entered is told from what a page of the same second shows already.
            headers[TimeHeader] = http.RequestServices.GetRequiredService<IClock>().GetCurrentInstant().ToUnixTimeMilliseconds().ToString(CultureInfo.InvariantCulture);
        }

        if (!http.Request.Path.StartsWithSegments("/assets"))
        {
            headers.CacheControl = "no-cache, no-store";
        }

        return next(http);
    });

    /// <summary>
    /// Files of the pages. One that is asked for by its version never changes under that address; any other is asked for anew each
    /// time, so that modules of two versions never meet.
    /// </summary>
    public static void UseAssets(this IApplicationBuilder app)
    {
        var types = new FileExtensionContentTypeProvider();
        types.Mappings[".webmanifest"] = "application/manifest+json";
        app.UseStaticFiles(new StaticFileOptions
        {
            ContentTypeProvider = types,
            OnPrepareResponse = file => file.Context.Response.Headers.CacheControl =
                file.Context.Request.Query.ContainsKey("v") ? "public, max-age=31536000, immutable" : "no-cache",
        });
    }

    /// <summary>
    /// A cookie is sent by any page that can make a browser post here; a header of our own is not. So a write to the API that
    /// is signed in by cookie must carry one.
    /// </summary>
    public static void UseApiForgeryGuard(this IApplicationBuilder app) => app.Use(async (http, next) =>
    {
        var writes = !HttpMethods.IsGet(http.Request.Method) && !HttpMethods.IsHead(http.Request.Method);
        if (writes && SessionAuthentication.IsApi(http.Request)
            && !SessionAuthentication.TryBearer(http.Request, out _)
            && http.Request.Cookies.Count > 0 && !http.Request.Headers.ContainsKey(ApiHeader))
        {
            await ProblemAnswers.Of(
                new Problem(ProblemKind.Forbidden, "header-missing",
                    $"A write that is signed in by cookie must carry the header {ApiHeader}."), http)
                .ExecuteAsync(http);
            return;
        }

        await next(http);
    });

    private static string AddressOf(HttpContext http) => http.Connection.RemoteIpAddress?.ToString() ?? "unknown";
}
