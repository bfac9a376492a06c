using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

public sealed class NewModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty]
    public AddMotorcycle.Request Input { get; set; } = new();

    public IReadOnlyList<SelectListItem> EngineModels { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input,
        AddMotorcycle.Handle,
        added =>
        {
            Done = string.Join(" ", added.Warnings.Prepend($"{Input.Registration} is in the books."));
            return Redirect($"/motorcycles/{added.Id}");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        EngineModels = await db.EngineModels.AsNoTracking()
            .OrderBy(m => m.Maker).ThenBy(m => m.Name)
            .Select(m => new SelectListItem($"{m.Maker} {m.Name}", m.Id.ToString()))
            .ToListAsync();
        return Page();
    }
}
