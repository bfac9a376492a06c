using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;
using Workshop.Web.Http;

namespace Workshop.Web.Features.SignIn;

[EnableRateLimiting(Guards.SignInLimit)]
public sealed class SignInModel(OpenSession sessions) : WorkshopPage
{
    [BindProperty]
    public OpenSession.Request Input { get; set; } = new();

    [BindProperty(Name = "returnTo", SupportsGet = true)]
    public string? ReturnTo { get; set; }

    public async Task<IActionResult> OnPost(CancellationToken ct)
    {
        var outcome = await sessions.Open(Input, SessionKind.Cookie, Request.Headers.UserAgent.ToString(), ct);
        if (!outcome.TryGet(out var answer, out var problem))
        {
            problem.AddTo(ModelState);
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
            return Page();
        }

        var properties = new AuthenticationProperties();
        properties.SetString(SessionAuthentication.TokenProperty, answer.Token);
        await HttpContext.SignInAsync(SessionAuthentication.Cookie, new ClaimsPrincipal(new ClaimsIdentity(SessionAuthentication.Cookie)), properties);
        return LocalRedirect(Url.IsLocalUrl(ReturnTo) ? ReturnTo : "/");
    }
}
