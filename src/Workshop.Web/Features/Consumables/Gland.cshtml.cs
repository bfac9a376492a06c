using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Consumables;

public sealed class GlandModel : WorkshopPage
{
    [BindProperty(SupportsGet = true, Name = "")]
    public CheckGland.Request Asked { get; set; } = new();

    public CheckGland.Answer? Found { get; private set; }

    /// <summary>What stands in a field, as it was typed.</summary>
    public string? Typed(string field) => Request.Query[field];

    public async Task<IActionResult> OnGet()
    {
        if (Request.Query.Count > 0)
        {
            Found = await Ask(Asked, CheckGland.Handle);
        }

        return Page();
    }
}
