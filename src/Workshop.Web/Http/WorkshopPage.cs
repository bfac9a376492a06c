using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Http;

/// <summary>What every page does alike: run a use case and, when it is refused, come back with the form as it was typed.</summary>
public abstract class WorkshopPage : PageModel
{
    private UseCases UseCases => HttpContext.RequestServices.GetRequiredService<UseCases>();

    private CancellationToken Aborted => HttpContext.RequestAborted;

    /// <summary>Reads what a page shows. A thing that does not exist ends in the page that says so.</summary>
    protected Task<Outcome<TAnswer>> Read<TRequest, TAnswer>(TRequest request, Handle<TRequest, TAnswer> handle) =>
        UseCases.Read(request, handle, Aborted);

    /// <summary>
    /// Answers a question whose parts stand in the address. Nothing where it is refused: then the faults stand beside their fields.
    /// </summary>
    protected async Task<TAnswer?> Ask<TRequest, TAnswer>(TRequest request, Handle<TRequest, TAnswer> handle)
        where TAnswer : class
    {
        if (!ModelState.IsValid)
        {
            Response.StatusCode = StatusCodes.Status400BadRequest;
            return null;
        }

        if ((await Read(request, handle)).TryGet(out var answer, out var problem))
        {
            return answer;
        }

        problem.AddTo(ModelState, "");
        Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        return null;
    }

    /// <summary>
    /// Runs a write. Done: <paramref name="done"/> says where to go. Refused, or typed in a way that no field can take: the
    /// faults stand beside their fields, and <paramref name="again"/> shows the form as it was typed.
    /// </summary>
    protected async Task<IActionResult> Write<TRequest, TAnswer>(
        TRequest request,
        Handle<TRequest, TAnswer> handle,
        Func<TAnswer, IActionResult> done,
        Func<Task<IActionResult>> again,
        string prefix = "Input")
    {
        ArgumentNullException.ThrowIfNull(done);
        ArgumentNullException.ThrowIfNull(again);
        if (ModelState.IsValid)
        {
            var outcome = await UseCases.Write(request, handle, Aborted);
            if (outcome.TryGet(out var answer, out var problem))
            {
                return done(answer);
            }

            problem.AddTo(ModelState, prefix);
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        }
        else
        {
            Response.StatusCode = StatusCodes.Status400BadRequest;
        }

        return await again();
    }

    /// <summary>
    /// Whether the person may do more here than look: a page that everybody reads asks before it writes, and shows its forms
    /// only to those who may send them.
    /// </summary>
    protected async Task<bool> May(string policy) =>
        (await HttpContext.RequestServices.GetRequiredService<IAuthorizationService>().AuthorizeAsync(User, policy)).Succeeded;

    /// <summary>The page for a refusal met while reading.</summary>
    protected IActionResult Refused(Problem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        HttpContext.Items[ProblemAnswers.ItemKey] = problem;
        return StatusCode(ProblemAnswers.StatusOf(problem.Kind));
    }

    /// <summary>A short sentence for the next page: what was just done.</summary>
    [TempData]
    public string? Done { get; set; }
}
