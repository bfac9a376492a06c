using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Workshop.Domain.Outcomes;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Errors;

/// <summary>What was refused or went wrong, in a sentence. Any method may end here, so no form token is asked for.</summary>
[IgnoreAntiforgeryToken]
public sealed class ErrorModel : PageModel
{
    public string Title { get; private set; } = "Something went wrong";

    public string Sentence { get; private set; } = "The fault is on our side and was logged. Nothing of this request was kept unless a page said so.";

    public void OnGet(int? status) => Explain(status);

    public void OnPost(int? status) => Explain(status);

    private void Explain(int? status)
    {
        if (HttpContext.Items[ProblemAnswers.ItemKey] is Problem problem)
        {
            (Title, Sentence) = (problem.Kind == ProblemKind.NotFound ? "Not here" : "Not possible", problem.Sentence);
        }
        else if (status == StatusCodes.Status404NotFound)
        {
            (Title, Sentence) = ("Not here", "There is no page at this address.");
        }
        else if (status == StatusCodes.Status429TooManyRequests)
        {
            (Title, Sentence) = ("Too many requests", "Wait a minute, then try again.");
        }
        else if (status is >= 400 and < 500)
        {
            (Title, Sentence) = ("Not understood", "The form had expired or was incomplete. Go back, reload the page and send it again.");
        }
    }
}
