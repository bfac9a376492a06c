using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

public sealed class PlacesModel(WorkshopDbContext db) : StoresPage(db)
{
    [BindProperty]
    public AddPlace.Request Input { get; set; } = new();

    public IReadOnlyList<ListPlaces.Place> Places { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input,
        AddPlace.Handle,
        added =>
        {
            Done = $"{added.Name} is a place now; its code is {added.Code}.";
            return Redirect("/stores/places");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        await Begin();
        Places = (await Read(new ListPlaces.Request(Retired: true, CountParts: true), ListPlaces.Handle)).Value.Places;
        return Page();
    }
}
