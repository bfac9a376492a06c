using System.Security.Claims;
using Workshop.Web.Http;

namespace Workshop.Web.Features.SignIn;

internal static class SignInApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var session = api.MapGroup("/session").WithTags("Session");
        session.MapPost("/", async (OpenSession.Request body, OpenSession sessions, HttpContext http, CancellationToken ct) =>
                new ApiResult<OpenSession.Answer>(await sessions.Open(body, SessionKind.Bearer, http.Request.Headers.UserAgent.ToString(), ct)))
            .AllowAnonymous().RequireRateLimiting(Guards.SignInLimit);
        session.MapDelete("/", async (ClaimsPrincipal who, Sessions sessions, CancellationToken ct) =>
        {
            await sessions.Revoke(SignedIn.SessionOf(who), ct);
            return TypedResults.NoContent();
        });
        session.MapPut("/password", async (ChangePassword.Request body, ChangePassword change, ClaimsPrincipal who, CancellationToken ct) =>
                new ApiResult<ChangePassword.Answer>(await change.Change(body, SignedIn.AccountOf(who), SignedIn.SessionOf(who), ct)))
            .RequireRateLimiting(Guards.SignInLimit);
    }
}
