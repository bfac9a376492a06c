using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Findings;

/// <summary>Whom somebody has to ask.</summary>
public sealed class WaitingModel(WorkshopDbContext db) : WorkshopPage
{
    public IReadOnlyList<ListWaiting.Row> Rows { get; private set; } = [];

    public WorkshopTime Time { get; private set; } = null!;

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new ListWaiting.Request(), ListWaiting.Handle)).TryGet(out var waiting, out var problem))
        {
            return Refused(problem);
        }

        (Rows, Time) = (waiting.Rows, await WorkshopTimes.Read(db, HttpContext.RequestAborted));
        return Page();
    }
}
