using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.Extensions.Options;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Http;

/// <summary>Bearer tokens of the API, looked up in the table of sessions.</summary>
internal sealed class BearerHandler(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, Sessions sessions)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (!SessionAuthentication.TryBearer(Request, out var token))
        {
            return AuthenticateResult.NoResult();
        }

        var principal = await sessions.Find(token, SessionKind.Bearer, Scheme.Name, Context.RequestAborted);
        return principal is null
            ? AuthenticateResult.Fail("The token is unknown, expired or revoked.")
            : AuthenticateResult.Success(new AuthenticationTicket(principal, Scheme.Name));
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties) =>
        SessionAuthentication.Unauthorized(Context);

    protected override Task HandleForbiddenAsync(AuthenticationProperties properties) =>
        SessionAuthentication.Forbidden(Context);
}

/// <summary>One door for both: a bearer token where there is one, the cookie otherwise.</summary>
internal static class SessionAuthentication
{
    public const string Either = "either";
    public const string Bearer = "bearer";
    public const string Cookie = "cookie";
    public const string TokenProperty = "token";
    public const string SignInPath = "/sign-in";

    private const string BearerPrefix = "Bearer ";

    public static void AddSessions(this IServiceCollection services)
    {
        services.AddScoped<Sessions>();
        services.AddAuthentication(Either)
            .AddPolicyScheme(Either, null, o => o.ForwardDefaultSelector =
                http => TryBearer(http.Request, out _) ? Bearer : Cookie)
            .AddScheme<AuthenticationSchemeOptions, BearerHandler>(Bearer, null)
            .AddCookie(Cookie, o =>
            {
                o.Cookie.Name = "workshop";
                o.Cookie.HttpOnly = true;
                o.Cookie.SameSite = SameSiteMode.Strict;
                o.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
                o.LoginPath = SignInPath;
                o.ReturnUrlParameter = "returnTo";
                o.ExpireTimeSpan = Sessions.CookieLife.ToTimeSpan();
                o.Events.OnValidatePrincipal = ReadSession;
                o.Events.OnRedirectToLogin = context => IsApi(context.Request)
                    ? Unauthorized(context.HttpContext)
                    : Redirect(context);
                o.Events.OnRedirectToAccessDenied = context => IsApi(context.Request)
                    ? Forbidden(context.HttpContext)
                    : Refuse(context.HttpContext);
            });
    }

    public static bool IsApi(HttpRequest request) => request.Path.StartsWithSegments("/api");

    public static bool TryBearer(HttpRequest request, out string token)
    {
        var header = request.Headers.Authorization.ToString();
        var found = header.StartsWith(BearerPrefix, StringComparison.OrdinalIgnoreCase);
        token = found ? header[BearerPrefix.Length..].Trim() : "";
        return found;
    }

    public static Task Unauthorized(HttpContext http) =>
        TypedResults.Problem(
            statusCode: StatusCodes.Status401Unauthorized,
            detail: "Sign in first: POST /api/v1/session answers a bearer token.",
            extensions: new Dictionary<string, object?> { ["code"] = "not-signed-in", ["requestId"] = http.TraceIdentifier })
        .ExecuteAsync(http);

    public static Task Forbidden(HttpContext http) =>
        ProblemAnswers.Of(NotAllowed, http).ExecuteAsync(http);

    private static Problem NotAllowed { get; } = new(ProblemKind.Forbidden, "not-allowed",
        "Your account does not hold the role that this needs; ask the manager.");

    private static async Task ReadSession(CookieValidatePrincipalContext context)
    {
        var token = context.Properties.GetString(TokenProperty);
        var sessions = context.HttpContext.RequestServices.GetRequiredService<Sessions>();
        var principal = token is null
            ? null
            : await sessions.Find(token, SessionKind.Cookie, Cookie, context.HttpContext.RequestAborted);
        if (principal is null)
        {
            context.RejectPrincipal();
            await context.HttpContext.SignOutAsync(Cookie);
            return;
        }

        context.ReplacePrincipal(principal);
    }

    private static Task Redirect(RedirectContext<CookieAuthenticationOptions> context)
    {
        context.Response.Redirect(context.RedirectUri);
        return Task.CompletedTask;
    }

    private static Task Refuse(HttpContext http)
    {
        http.Items[ProblemAnswers.ItemKey] = NotAllowed;
        http.Response.StatusCode = StatusCodes.Status403Forbidden;
        return Task.CompletedTask;
    }
}
