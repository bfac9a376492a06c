using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.People;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

public sealed class NewModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? Kind { get; set; }

    /// <summary>Who is to be the technician.</summary>
    [BindProperty(SupportsGet = true)]
    public Guid? Person { get; set; }

    [BindProperty]
    public AddResource.Request Input { get; set; } = new();

    public ResourceKind KindOf => Input.Kind ?? Words.Read<ResourceKind>(Kind) ?? ResourceKind.Bay;

    public IReadOnlyList<SelectListItem> People { get; private set; } = [];

    public IReadOnlyList<string> AskedFor { get; private set; } = [];

    public Task<IActionResult> OnGet()
    {
        Input = Input with { PersonId = Person };
        return Show();
    }

    public Task<IActionResult> OnPost() => Write(
        Input,
        AddResource.Handle,
        added =>
        {
            Done = $"{Input.Name} is entered.";
            return Redirect(Input.Kind == ResourceKind.Technician ? $"/people/resources/{added.Id}" : $"/people/resources#{Input.Kind}");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        AskedFor = await Resources.AskedFor.Read(db, KindOf, HttpContext.RequestAborted);
        if (KindOf == ResourceKind.Technician)
        {
            var staff = (await Read(new ListPeople.Request(), ListPeople.Handle)).Value.People;
            People = [.. staff.Where(p => p.Technician is null && p.ErasedAt is null).Select(p => new SelectListItem(p.Name, p.Id.ToString()))];
        }

        return Page();
    }
}
