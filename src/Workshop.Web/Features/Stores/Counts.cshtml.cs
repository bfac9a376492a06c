using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

public sealed class CountsModel(WorkshopDbContext db) : StoresPage(db)
{
    [BindProperty]
    public StartCount.Request Input { get; set; } = new();

    public IReadOnlyList<ListCounts.Row> Rows { get; private set; } = [];

    /// <summary>That are not being counted.</summary>
    public IReadOnlyList<ListPlaces.Place> Places { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(Input, StartCount.Handle, begun => Redirect($"/stores/counts/{begun.Id}"), again: Show);

    private async Task<IActionResult> Show()
    {
        await Begin();
        Rows = (await Read(new ListCounts.Request(), ListCounts.Handle)).Value.Rows;
        Places = [.. (await Read(new ListPlaces.Request(), ListPlaces.Handle)).Value.Places.Where(p => p.OpenCountId is null)];
        return Page();
    }
}
