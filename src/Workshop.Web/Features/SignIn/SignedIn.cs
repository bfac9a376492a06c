using System.Security.Claims;
using Workshop.Web.Http;

namespace Workshop.Web.Features.SignIn;

/// <summary>Whose sign-in a request carries, and which.</summary>
internal static class SignedIn
{
    public static Guid AccountOf(ClaimsPrincipal who) => Guid.Parse(who.FindFirstValue(ClaimTypes.NameIdentifier)!);

    public static Guid SessionOf(ClaimsPrincipal who) => Guid.Parse(who.FindFirstValue(Caller.SessionClaim)!);
}
