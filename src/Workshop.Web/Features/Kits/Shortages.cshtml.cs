using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

public sealed class ShortagesModel(WorkshopDbContext db) : WorkshopPage
{
    public ListShortages.Answer Lacking { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new ListShortages.Request(), ListShortages.Handle)).TryGet(out var lacking, out var problem))
        {
            return Refused(problem);
        }

        (Lacking, Time) = (lacking, await WorkshopTimes.Read(db, HttpContext.RequestAborted));
        return Page();
    }
}
