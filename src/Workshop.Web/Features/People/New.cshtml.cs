using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

/// <summary>
/// What was added is shown by the answer of the form itself, never by an address: the password passes once. A reload sends the
/// form again, under the same key, and shows that it was shown.
/// </summary>
public sealed class NewModel : WorkshopPage
{
    [BindProperty]
    public AddPerson.Request Input { get; set; } = new();

    public AddPerson.Answer? Added { get; private set; }

    public Task<IActionResult> OnPost() => Write(
        Input,
        AddPerson.Handle,
        added =>
        {
            Added = added;
            return Page();
        },
        again: () => Task.FromResult<IActionResult>(Page()));
}
