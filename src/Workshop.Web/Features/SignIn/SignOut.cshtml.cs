using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.SignIn;

public sealed class SignOutModel(Sessions sessions) : WorkshopPage
{
    public async Task<IActionResult> OnPost(CancellationToken ct)
    {
        await sessions.Revoke(SignedIn.SessionOf(User), ct);
        await HttpContext.SignOutAsync(SessionAuthentication.Cookie);
        return LocalRedirect(SessionAuthentication.SignInPath);
    }
}
