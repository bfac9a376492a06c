using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

public sealed class PlaceModel(WorkshopDbContext db) : StoresPage(db)
{
    private const string VersionField = "Input.RowVersion";

    [BindProperty(SupportsGet = true)]
    public string Code { get; set; } = "";

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    [BindProperty]
    public EditPlace.Request Input { get; set; } = new();

    public GetPlace.Answer Place { get; private set; } = null!;

    public Task<IActionResult> OnGet() => Show(asItStands: true);

    public async Task<IActionResult> OnPost()
    {
        if (await Load() is { } problem)
        {
            return Refused(problem);
        }

        return await Write(
            Input with { Id = Place.Id },
            EditPlace.Handle,
            changed =>
            {
                Done = "Saved.";
                return Redirect($"/stores/places/{Uri.EscapeDataString(changed.Code)}");
            },
            again: () => Show(asItStands: false));
    }

    public async Task<IActionResult> OnPostCount()
    {
        ModelState.Clear();
        return await Write(
            new StartCount.Request { PlaceCode = Code }, StartCount.Handle, begun => Redirect($"/stores/counts/{begun.Id}"),
            again: () => Show(asItStands: true), "");
    }

    private async Task<Problem?> Load()
    {
        (await Read(new GetPlace.Request(Code, After), GetPlace.Handle)).TryGet(out var place, out var problem);
        Place = place!;
        return problem;
    }

    private async Task<IActionResult> Show(bool asItStands)
    {
        if (await Load() is { } problem)
        {
            return Refused(problem);
        }

        await Begin();
        if (asItStands)
        {
            Input = new EditPlace.Request
            {
                RowVersion = Place.RowVersion, Name = Place.Name, Code = Place.Code, WalkOrder = Place.WalkOrder, Retired = Place.Retired,
            };
        }
        else if (Response.StatusCode == StatusCodes.Status412PreconditionFailed)
        {
            // What stands is shown above the form: the next send is made in its knowledge.
            ModelState.Remove(VersionField);
            Input = Input with { RowVersion = Place.RowVersion };
        }

        return Page();
    }
}
