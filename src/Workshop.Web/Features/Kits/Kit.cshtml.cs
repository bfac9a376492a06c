using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

public sealed class KitModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    public CardHead Head { get; private set; } = null!;

    public KitOnShelf Kit { get; private set; } = new([], []);

    public bool MayReserve => Kit.IsShort && Head.Card.State is (JobCardState.Booked or JobCardState.CheckedIn);

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        new ReserveKit.Request { Number = Number },
        ReserveKit.Handle,
        reserved =>
        {
            Done = reserved.Lines.Any(l => l.ShortBy > 0)
                ? "Reserved what was free; the kit is still short."
                : "The whole kit is reserved.";
            return Redirect($"/job-cards/{Number}/kit");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetKit.Request(Number), GetKit.Handle)).TryGet(out var kit, out problem))
        {
            return Refused(problem);
        }

        (Head, Kit) = (head, new KitOnShelf(kit.Lines, kit.Compounds));
        return Page();
    }
}
