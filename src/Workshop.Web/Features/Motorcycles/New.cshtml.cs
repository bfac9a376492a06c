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

    /// <summary>The owner of another motorcycle, whom the link names.</summary>
    [BindProperty(SupportsGet = true)]
    public Guid? Owner { get; set; }

    /// <summary>The name of an owner who is on record already.</summary>
    public string? KnownOwner { get; private set; }

    public Task<IActionResult> OnGet()
    {
        Input = Input with { OwnerId = Owner };
        return Show();
    }

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
        KnownOwner = Input.OwnerId is { } owner
            ? await db.People.Where(p => p.Id == owner && !p.IsStaff && p.ErasedAt == null).Select(p => p.Name).SingleOrDefaultAsync()
            : null;
        return Page();
    }
}
