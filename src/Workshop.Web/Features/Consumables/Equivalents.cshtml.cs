using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Consumables;

public sealed class EquivalentsModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? Part { get; set; }

    public FindEquivalents.Answer? Found { get; private set; }

    public async Task<IActionResult> OnGet()
    {
        if (!string.IsNullOrWhiteSpace(Part))
        {
            Found = await Ask(new FindEquivalents.Request { Part = Part.Trim() }, FindEquivalents.Handle);
        }

        return Page();
    }
}
