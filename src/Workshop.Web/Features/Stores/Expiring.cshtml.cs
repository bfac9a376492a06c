using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>Lots that expire soon; what is expired is scrapped from here, all that lies there.</summary>
public sealed class ExpiringModel(WorkshopDbContext db) : StoresPage(db)
{
    [BindProperty(SupportsGet = true)]
    public int? WithinDays { get; set; }

    [BindProperty]
    public ScrapStock.Request Input { get; set; } = new();

    public ListExpiring.Answer List { get; private set; } = null!;

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input with { Reason = ScrapReason.Expired },
        ScrapStock.Handle,
        gone =>
        {
            Done = $"{gone.Unit.Say(gone.Quantity)} of {gone.Name} scrapped.{CardThatLost.Say(gone.CardsThatLost, gone.Unit)}";
            return Redirect($"/stores/expiring?withinDays={WithinDays}");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        await Begin();
        if (!(await Read(new ListExpiring.Request(WithinDays), ListExpiring.Handle)).TryGet(out var list, out var problem))
        {
            problem.AddTo(ModelState, "");
            list = (await Read(new ListExpiring.Request(), ListExpiring.Handle)).Value;
        }

        List = list;
        return Page();
    }
}
