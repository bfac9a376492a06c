using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

public sealed class NewModel : WorkshopPage
{
    [BindProperty]
    public AddPart.Request Input { get; set; } = new();

    public void OnGet()
    {
    }

    public Task<IActionResult> OnPost() => Write(
        Input,
        AddPart.Handle,
        added =>
        {
            Done = $"{added.Name} is in the books.";
            return Redirect(StoresPage.AddressOf(added.Code));
        },
        again: () => Task.FromResult<IActionResult>(Page()));
}
