using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;
using Workshop.Web.Http;

namespace Workshop.Web.Features.SignIn;

/// <summary>The own password, changed by whoever knows it. No field ever comes back filled.</summary>
[EnableRateLimiting(Guards.SignInLimit)]
public sealed class OwnPasswordModel(ChangePassword change) : WorkshopPage
{
    [BindProperty]
    public ChangePassword.Request Input { get; set; } = new();

    public async Task<IActionResult> OnPost(CancellationToken ct)
    {
        // On a page both are typed by hand.
        var outcome = await change.Change(Input with { NewPasswordAgain = Input.NewPasswordAgain ?? "" }, SignedIn.AccountOf(User), SignedIn.SessionOf(User), ct);
        if (outcome.TryGet(out var answer, out var problem))
        {
            Done = answer.OthersEnded == 0 ? "Your password is changed." : $"Your password is changed, and {Ended(answer.OthersEnded)}.";
            return LocalRedirect("/own-password");
        }

        problem.AddTo(ModelState);
        Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        return Page();
    }

    private static string Ended(int others) => others == 1 ? "one other sign-in has ended" : FormattableString.Invariant($"{others} other sign-ins have ended");
}
